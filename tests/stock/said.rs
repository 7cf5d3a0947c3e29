//! What a finding says of a plus, and what is told of a month that is none.

use oxyfolio::check::stock::{InvalidMonth, Marks, Month};

use super::support::{NO_MARKS, good, psi, report};

#[test]
fn an_overfilled_cylinder_is_told_with_or_without_its_plus() {
    // 2015 psi, and a tenth more with a plus; aluminium has no use of one.
    for (plus, aluminium, limit) in [
        (false, false, "2015 psi to which it may be filled without a plus"),
        (true, false, "2216.5 psi to which it may be filled with its plus"),
        (true, true, "2015 psi to which it may be filled without a plus"),
        (false, true, "2015 psi to which it may be filled without a plus"),
    ] {
        let marks = Marks {
            plus,
            aluminium,
            ..NO_MARKS
        };
        let one = good("a").pressure(psi(2300.0)).marks(marks);
        let said = report(&[one]).judged[0].findings[0].to_string();
        assert_eq!(
            said,
            format!("the gauge reads 2300 psi, above the {limit}: overfilled, hot, or the wrong size")
        );
    }
}

#[test]
fn what_is_no_month_is_told_what_one_is() {
    let words = "expected a month of the calendar from 1900 to 9999, written YYYY-MM";
    assert_eq!(Month::new(2024, 13).unwrap_err(), InvalidMonth);
    assert_eq!(InvalidMonth.to_string(), words);
    assert_eq!("May 2024".parse::<Month>().unwrap_err().to_string(), words);
}
