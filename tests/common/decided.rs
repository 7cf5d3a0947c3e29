//! A fresh rulebook with every value decided.
#![allow(dead_code)]

/// What a medical director might write, by what the mark asks for: invented figures of an invented service, in psi.
pub const ANSWERS: &[(&str, &str)] = &[
    ("where the service works", "Upper Vale (an invented place)"),
    ("who signs this protocol", "Dr. Nobody (an invented person)"),
    ("the edition's name", "\"1\""),
    ("the day from which", "2026-11-01"),
    ("the day by which", "2027-11-01"),
    ("the day on which", "2026-10-20"),
    ("the ages of children", "under 12 years"),
    ("the ages of adults", "at least 12 years"),
    ("least to most flow of the cannula", "1 to 6 L/min"),
    ("the flow you usually set on the cannula", "2 L/min"),
    ("least to most oxygen share by cannula", "24 to 44 %"),
    ("least to most flow of the mask", "10 to 15 L/min"),
    ("the flow you usually set on the mask", "15 L/min"),
    ("least to most oxygen share by mask", "60 to 95 %"),
    ("the range aimed at for adults who retain", "88 to 92 %"),
    ("the range aimed at for", "94 to 98 %"),
    ("device and flow to start them with", "nasal-cannula at 1 L/min"),
    ("device and flow to start", "nasal-cannula at 2 L/min"),
    ("their least step", "nasal-cannula at 1 L/min"),
    ("their most step", "nasal-cannula at 2 L/min"),
    ("the least step for", "nasal-cannula at 2 L/min"),
    ("the most step for", "non-rebreather at 15 L/min"),
    ("look at", "5 min"),
    ("the connection of your cylinders", "Small yoke"),
    ("the number of the connection", "870"),
    ("the size, as your crews", "D"),
    ("whose sizes these are", "national letters"),
    ("the water capacity", "2.2 L"),
    ("what it holds when full", "350 L at 2200 psi"),
    ("the service pressure", "2015 psi"),
    ("its cylinder factor", "0.16 L/psi"),
    ("the pressure never counted on", "200 psi"),
    ("the reading at which the cylinder is changed", "500 psi"),
    ("the least reading to go into service", "1000 psi"),
    ("what is added to the time wanted", "50 %"),
    ("the most a cylinder may be filled to", "110 %"),
    ("the time between tests", "5 years"),
    ("least to most temperature for keeping", "-30 to 50 °C"),
    ("least to most temperature for use", "-20 to 50 °C"),
    ("who may", "Any crew member signed off for oxygen."),
    ("the readings to print", "[2000 psi, 1500 psi, 1000 psi, 500 psi]"),
    ("the most flow of the cannula, in", "6 L/min"),
    ("a flow just above the cannula's most", "6.1 L/min"),
    ("a flow just below the least of the mask", "9.9 L/min"),
    ("a flow to work minutes out for", "15 L/min"),
    ("a reading to work minutes out for", "2000 psi"),
    // (2000 − 200) psi × 0.16 L/psi ÷ 15 L/min.
    ("the minutes", "19 min"),
];

/// Every mark of a text with what is to be written.
pub fn marks(text: &str) -> Vec<(String, String)> {
    text.split("\"undecided (")
        .skip(1)
        .map(|rest| {
            let what = rest.split_once(")\"").unwrap().0;
            (format!("\"undecided ({what})\""), what.to_owned())
        })
        .collect()
}

pub fn answer(what: &str) -> &'static str {
    let found = ANSWERS.iter().find(|(beginning, _)| what.starts_with(beginning));
    found.unwrap_or_else(|| panic!("no answer to {what:?}")).1
}

/// A chapter with its first marks filled, as many as are given; all of them without a number.
pub fn filled(text: &str, most: Option<usize>) -> String {
    let mut text = text.to_owned();
    for (mark, what) in marks(&text).into_iter().take(most.unwrap_or(usize::MAX)) {
        text = text.replacen(&mark, answer(&what), 1);
    }
    text
}
