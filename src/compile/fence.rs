//! Where the parts of a fenced block are, and what to do about one that is left open.

use core::ops::Range;

pub(super) const CLOSE: &str = "close the block with a line of three backticks";
pub(super) const MOVE_AND_CLOSE: &str =
    "move the block to the left margin, and close it with a line of three backticks";
pub(super) const CLOSE_OR_BEGIN: &str = "close the block with a line of three backticks; or, where this line ends a rule, \
                                         write the line that begins it, such as ```yaml device";

/// Where the parts of a fenced block are.
pub(super) struct Fence {
    pub(super) opening: Range<usize>,
    pub(super) body: Range<usize>,
    pub(super) ticks: usize,
    pub(super) closed: bool,
    pub(super) at_line_start: bool,
}

impl Fence {
    pub(super) fn measure(text: &str, range: Range<usize>) -> Self {
        let block = text.get(range.clone()).unwrap_or("").trim_end();
        let marker = block.chars().next().unwrap_or('`');
        let ticks = block.chars().take_while(|&c| c == marker).count();
        let opening_len = block.find('\n').unwrap_or(block.len());
        let opening = block.get(..opening_len).unwrap_or("").trim_end().len();
        let last_line = block.rfind('\n').map_or(block.len(), |newline| newline + 1);
        let closing = block.get(last_line..).unwrap_or("").trim();
        let closed =
            closing.chars().count() >= ticks && closing.chars().all(|c| c == marker) && !closing.is_empty();
        let body_start = (opening_len + 1).min(block.len());
        let body_end = if closed { last_line } else { block.len() }.max(body_start);
        let before = text.get(..range.start).unwrap_or("");
        Self {
            opening: range.start..range.start + opening,
            body: range.start + body_start..range.start + body_end,
            ticks,
            closed,
            at_line_start: before.is_empty() || before.ends_with('\n'),
        }
    }

    /// The first line inside the block that would itself open a block with at least `least` ticks.
    pub(super) fn inner_fence(&self, text: &str, least: usize) -> Option<Range<usize>> {
        let mut start = self.body.start;
        for line in text.get(self.body.clone())?.split_inclusive('\n') {
            let fence = line.trim();
            let ticks = ['`', '~']
                .map(|marker| fence.chars().take_while(|&c| c == marker).count())
                .into_iter()
                .max()
                .unwrap_or(0);
            if ticks >= least.max(3) {
                return Some(start..start + line.trim_end().len());
            }
            start += line.len();
        }
        None
    }
}
