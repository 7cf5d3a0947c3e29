//! A line of NDJSON into a buffer.

use super::{
    BadLine, Fault, MAX_LINE, Names, RunBuffer,
    buffer::{Spot, Value},
    key::Key,
    problem::About,
    scan::{Scanner, Shape, Stop},
};

impl<'n> RunBuffer<'n> {
    /// Reads a run from a line of JSON. `number` is the line's number in its file, from 1.
    ///
    /// Names are found while it is read. What can't be understood is among the [problems](Self::problems), each with its
    /// place; the rest is used.
    ///
    /// ```
    /// use oxyfolio::records::run::{Names, RunBuffer};
    /// use oxyfolio::RULEBOOK;
    ///
    /// let names = Names::new(&RULEBOOK);
    /// let mut run = RunBuffer::new();
    /// let line = r#"{"run": "A-17", "events": [{"at": "2026-03-01T14:05:00Z", "do": "set-flow", "flow": 4}]}"#;
    /// run.read_json(line.as_bytes(), 1, &names)?;
    /// assert_eq!(run.name(), Some("A-17"));
    /// let problem = run.problems()[0];
    /// assert_eq!(problem.code(), "unit-missing");
    /// assert_eq!(Some(problem.byte), line.find("\"flow\""));
    /// assert_eq!(problem.hint().as_deref(), Some("did you mean `flow_lpm`?"));
    /// # Ok::<(), oxyfolio::records::run::BadLine>(())
    /// ```
    ///
    /// # Errors
    ///
    /// [`BadLine`] when the line isn't UTF-8, isn't JSON, isn't an object, or is too long, too deep or too full. What the
    /// buffer holds then is of no use.
    pub fn read_json(&mut self, line: &[u8], number: u64, names: &'n Names<'_>) -> Result<(), BadLine> {
        self.begin(number);
        if line.len() > MAX_LINE {
            return Err(BadLine::new(MAX_LINE, Fault::TooLong));
        }
        let text = str::from_utf8(line).map_err(|error| BadLine::new(error.valid_up_to(), Fault::NotUtf8))?;
        // Taken out, so that a text in it and the rest of the buffer can be borrowed at once.
        let mut scratch = core::mem::take(&mut self.scratch);
        let mut scanner = Scanner::new(text);
        let read = self.object(&mut scanner, text, number, names, &mut scratch);
        self.scratch = scratch;
        read.map_err(|Stop| scanner.bad())
    }

    fn object(
        &mut self,
        scanner: &mut Scanner<'_>,
        text: &str,
        line: u64,
        names: &'n Names<'_>,
        scratch: &mut String,
    ) -> Result<(), Stop> {
        let spot = Spot { text, line, byte: 0 };
        let begin = scanner.place();
        if scanner.shape()? != Shape::Object {
            scanner.skip(scratch)?;
            scanner.end()?;
            return Err(scanner.stop(BadLine::new(begin, Fault::NotObject)));
        }
        scanner.open_object()?;
        let (mut first, mut seen) = (true, 0);
        while let Some(byte) = scanner.has_key(first)? {
            first = false;
            let name = scanner.name(scratch)?;
            let Some(key) = Key::find(name).filter(|key| key.is_of_run()) else {
                self.strange_key(name, false, spot.at(byte));
                scanner.skip(scratch)?;
                continue;
            };
            if seen & key.bit() != 0 {
                self.refuse(key, About::Twice(key), spot.at(byte));
                scanner.skip(scratch)?;
                continue;
            }
            seen |= key.bit();
            match key {
                Key::Events => self.events(scanner, spot, names, scratch)?,
                Key::Conditions => self.conditions(scanner, spot, names, scratch)?,
                _ => self.value(key, scanner, spot, names, scratch)?,
            }
        }
        scanner.end()?;
        self.end(spot.at(begin));
        Ok(())
    }

    fn events(
        &mut self,
        scanner: &mut Scanner<'_>,
        spot: Spot<'_>,
        names: &'n Names<'_>,
        scratch: &mut String,
    ) -> Result<(), Stop> {
        let byte = scanner.place();
        match scanner.shape()? {
            Shape::List => {}
            Shape::Null => return scanner.skip(scratch).map(drop),
            found => {
                scanner.skip(scratch)?;
                let key = Key::Events;
                self.refuse(key, About::WrongType { key, found }, spot.at(byte));
                return Ok(());
            }
        }
        scanner.open_list()?;
        let mut first = true;
        while scanner.item(first)? {
            first = false;
            let byte = scanner.place();
            match scanner.shape()? {
                Shape::Object => self.event(scanner, spot.at(byte), names, scratch)?,
                found => {
                    scanner.skip(scratch)?;
                    self.strange_event(found, spot.at(byte))
                        .map_err(|bad| scanner.stop(bad))?;
                }
            }
        }
        Ok(())
    }

    fn event(
        &mut self,
        scanner: &mut Scanner<'_>,
        spot: Spot<'_>,
        names: &'n Names<'_>,
        scratch: &mut String,
    ) -> Result<(), Stop> {
        self.begin_event();
        scanner.open_object()?;
        let (mut first, mut seen, mut twice) = (true, 0, 0);
        while let Some(byte) = scanner.has_key(first)? {
            first = false;
            let key = match Key::take(scanner) {
                Some(key) => key,
                None => {
                    let name = scanner.name(scratch)?;
                    let Some(key) = Key::find(name).filter(|key| !key.is_of_run()) else {
                        self.strange_key(name, true, spot.at(byte));
                        scanner.skip(scratch)?;
                        continue;
                    };
                    key
                }
            };
            if seen & key.bit() != 0 {
                // Told once, however often it is written.
                if twice & key.bit() == 0 {
                    self.refuse(key, About::Twice(key), spot.at(byte));
                }
                twice |= key.bit();
                scanner.skip(scratch)?;
                continue;
            }
            seen |= key.bit();
            self.value(key, scanner, spot, names, scratch)?;
        }
        self.end_event(false, spot).map_err(|bad| scanner.stop(bad))
    }

    #[inline]
    fn value(
        &mut self,
        key: Key,
        scanner: &mut Scanner<'_>,
        spot: Spot<'_>,
        names: &'n Names<'_>,
        scratch: &mut String,
    ) -> Result<(), Stop> {
        let spot = spot.at(scanner.place());
        let value = match scanner.shape()? {
            Shape::Text => Value::Text(scanner.text(scratch)?),
            Shape::Number => {
                let number = scanner.number()?;
                let end = scanner.place();
                Value::Number(number, spot.text.get(spot.byte..end).unwrap_or_default())
            }
            _ => match scanner.skip(scratch)? {
                Shape::Null => Value::Null,
                other => Value::Other(other),
            },
        };
        self.set(key, value, names, spot);
        Ok(())
    }

    fn conditions(
        &mut self,
        scanner: &mut Scanner<'_>,
        spot: Spot<'_>,
        names: &'n Names<'_>,
        scratch: &mut String,
    ) -> Result<(), Stop> {
        let key = Key::Conditions;
        let byte = scanner.place();
        match scanner.shape()? {
            Shape::List => {}
            Shape::Null => return scanner.skip(scratch).map(drop),
            found => {
                scanner.skip(scratch)?;
                self.refuse(key, About::WrongType { key, found }, spot.at(byte));
                return Ok(());
            }
        }
        scanner.open_list()?;
        let (mut first, mut all) = (true, true);
        while scanner.item(first)? {
            first = false;
            let byte = scanner.place();
            match scanner.shape()? {
                Shape::Text => {
                    let name = scanner.text(scratch)?;
                    all &= self.condition(name, names, spot.at(byte));
                }
                found => {
                    scanner.skip(scratch)?;
                    self.refuse(key, About::WrongType { key, found }, spot.at(byte));
                    all = false;
                }
            }
        }
        self.has_conditions = all;
        Ok(())
    }
}
