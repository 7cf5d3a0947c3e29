//! Reads through gzip and zstd, told by their first bytes.

use std::io::{self, BufRead, BufReader, Cursor, Read};

use flate2::bufread::MultiGzDecoder;
use ruzstd::decoding::{
    BlockDecodingStrategy, FrameDecoder,
    errors::{FrameDecoderError, ReadFrameHeaderError},
};

/// The largest window that a zstd frame may ask for: what its level 19 uses is 8 MiB.
const MAX_WINDOW: u64 = 32 << 20;
const BUFFER: usize = 64 << 10;

/// A reader of what is in a file, packed or not.
pub fn unpacked<'r>(mut packed: impl Read + Send + 'r) -> io::Result<Box<dyn Read + Send + 'r>> {
    let mut first = Vec::with_capacity(4);
    packed.by_ref().take(4).read_to_end(&mut first)?;
    let is = |magic: &[u8]| first.starts_with(magic);
    // RFC 1952, 2.3.1; RFC 8878, 3.1.1 and 3.1.2 (a file may begin with a frame to be skipped).
    let (gzip, zstd) = (
        is(&[0x1f, 0x8b]),
        is(&[0x28, 0xb5, 0x2f, 0xfd]) || matches!(first.as_slice(), [0x50..=0x5f, 0x2a, 0x4d, 0x18]),
    );
    let whole = BufReader::with_capacity(BUFFER, Cursor::new(first).chain(packed));
    Ok(if gzip {
        Box::new(MultiGzDecoder::new(whole))
    } else if zstd {
        Box::new(Frames::new(whole))
    } else {
        Box::new(whole)
    })
}

/// The frames of a zstd file, one after the other; checksums are compared where there are any.
struct Frames<R> {
    packed: R,
    decoder: FrameDecoder,
    in_frame: bool,
}

impl<R: BufRead> Frames<R> {
    fn new(packed: R) -> Self {
        let mut decoder = FrameDecoder::new();
        decoder.set_max_window_size(MAX_WINDOW);
        Self {
            packed,
            decoder,
            in_frame: false,
        }
    }

    /// Goes to the next frame with content; whether there is one.
    fn next_frame(&mut self) -> io::Result<bool> {
        while !self.packed.fill_buf()?.is_empty() {
            match self.decoder.init(&mut self.packed) {
                Ok(()) => return Ok(true),
                Err(FrameDecoderError::ReadFrameHeaderError(ReadFrameHeaderError::SkipFrame {
                    length,
                    ..
                })) => {
                    let length = u64::from(length);
                    if io::copy(&mut self.packed.by_ref().take(length), &mut io::sink())? < length {
                        return Err(io::ErrorKind::UnexpectedEof.into());
                    }
                }
                Err(error) => return Err(broken(error)),
            }
        }
        Ok(false)
    }
}

fn broken(error: impl core::fmt::Display) -> io::Error {
    io::Error::new(io::ErrorKind::InvalidData, error.to_string())
}

impl<R: BufRead> Read for Frames<R> {
    fn read(&mut self, buffer: &mut [u8]) -> io::Result<usize> {
        loop {
            if !self.in_frame {
                if !self.next_frame()? {
                    return Ok(0);
                }
                self.in_frame = true;
            }
            while self.decoder.can_collect() == 0 && !self.decoder.is_finished() {
                self.decoder
                    .decode_blocks(&mut self.packed, BlockDecodingStrategy::UptoBlocks(1))
                    .map_err(broken)?;
            }
            let read = self.decoder.read(buffer)?;
            if read > 0 || buffer.is_empty() {
                return Ok(read);
            }
            let (written, found) = (
                self.decoder.get_checksum_from_data(),
                self.decoder.get_calculated_checksum(),
            );
            if written.is_some() && written != found {
                return Err(broken("the checksum differs"));
            }
            self.in_frame = false;
        }
    }
}
