//! Sets of inputs are sets; numbers compared with numbers, against whole numbers.

use oxyfolio::{
    book::{Comparison, Fact, Measure},
    guard::{Inputs, mask},
};

/// Every input alone.
fn singles() -> Vec<Inputs> {
    let mut all = vec![Inputs::DEVICE, Inputs::GROUP, Inputs::CONDITIONS, Inputs::TARGET];
    all.extend(Measure::ALL.iter().map(|measure| Inputs::measure(*measure)));
    // Whether it has a bag is the device's to tell.
    assert_eq!(Inputs::fact(Fact::DeviceHasReservoir), Inputs::DEVICE);
    let facts = Fact::ALL.iter().filter(|fact| **fact != Fact::DeviceHasReservoir);
    all.extend(facts.map(|fact| Inputs::fact(*fact)));
    all
}

#[test]
fn two_inputs_are_two() {
    let all = singles();
    for (i, one) in all.iter().enumerate() {
        for (j, other) in all.iter().enumerate() {
            assert_eq!(one.shares(*other), i == j, "{i}, {j}");
            assert_eq!(one.contains(*other), i == j, "{i}, {j}");
        }
        assert!(!one.shares(Inputs::NONE) && one.contains(Inputs::NONE));
    }
}

#[test]
fn what_is_put_together_contains_its_parts_and_nothing_else() {
    let all = singles();
    for (i, one) in all.iter().enumerate() {
        for (j, other) in all.iter().enumerate() {
            let mut both = *one;
            both |= *other;
            assert_eq!(both, *one | *other);
            for (k, third) in all.iter().enumerate() {
                assert_eq!(both.contains(*third), k == i || k == j, "{i}, {j}, {k}");
                assert_eq!(both.shares(*third), k == i || k == j, "{i}, {j}, {k}");
            }
            assert_eq!(one.contains(both), i == j);
        }
    }
}

#[test]
fn numbers_compare_as_whole_numbers_do() {
    for left in -3..=3_i32 {
        for right in -3..=3_i32 {
            for (comparison, holds) in [
                (Comparison::Equal, left == right),
                (Comparison::NotEqual, left != right),
                (Comparison::Less, left < right),
                (Comparison::AtMost, left <= right),
                (Comparison::Greater, left > right),
                (Comparison::AtLeast, left >= right),
            ] {
                let found = mask::answer(f64::from(left), comparison, f64::from(right));
                assert_eq!(found, if holds { 1 } else { 2 }, "{left} {comparison:?} {right}");
                assert_eq!(mask::answer(f64::NAN, comparison, f64::from(right)), 0);
                assert_eq!(mask::answer(f64::from(left), comparison, f64::NAN), 0);
            }
        }
    }
}
