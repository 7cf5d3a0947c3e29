//! How many minutes are on hand.

use alloc::{borrow::ToOwned as _, collections::BTreeMap, string::String, vec::Vec};

use super::{Judged, Stocked};
use crate::book::{Device, Rulebook};
use crate::check::duration::Supply;
use crate::quantity::{Temperature, Volume};

/// What is on hand, at a location or in all.
#[derive(Clone, Debug, PartialEq)]
pub struct OnHand<'b> {
    /// The location; empty for cylinders whose location was not given, and for all together.
    pub location: String,
    /// How many cylinders are counted.
    pub counted: usize,
    /// How many are not.
    pub not_counted: usize,
    /// The gas of those counted, above the residual pressure.
    pub usable_litres: f64,
    /// How long it lasts with each device of the book, one after the other, in the order of the book.
    pub minutes: Vec<Minutes<'b>>,
}

/// How long the gas lasts with one device at its usual flow.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Minutes<'b> {
    /// The device.
    pub device: &'b Device,
    /// Whole minutes: the sum over the cylinders counted, each rounded down. None where the device has no flow.
    pub minutes: Option<u64>,
}

impl<'b> OnHand<'b> {
    fn nothing(book: &'b Rulebook, location: &str) -> Self {
        let none = |device| Minutes {
            device,
            minutes: Some(0),
        };
        Self {
            location: location.to_owned(),
            counted: 0,
            not_counted: 0,
            usable_litres: 0.0,
            minutes: book.devices.iter().map(none).collect(),
        }
    }
}

/// The sums of each location, in the order of the list, and of all.
pub fn sums<'b>(
    book: &'b Rulebook,
    stock: &[Stocked],
    judged: &[Judged<'b>],
    temperature: Temperature,
) -> (Vec<OnHand<'b>>, OnHand<'b>) {
    let mut locations: Vec<OnHand<'b>> = Vec::new();
    let mut places: BTreeMap<&str, usize> = BTreeMap::new();
    let mut all = OnHand::nothing(book, "");
    for (one, judged) in stock.iter().zip(judged) {
        let place = *places.entry(&one.location).or_insert_with(|| {
            locations.push(OnHand::nothing(book, &one.location));
            locations.len() - 1
        });
        let Some(here) = locations.get_mut(place) else {
            continue;
        };
        let Some(pressure) = one.pressure.filter(|_| judged.is_counted()) else {
            here.not_counted += 1;
            all.not_counted += 1;
            continue;
        };
        let supply = Supply::of(book, judged.cylinder).temperature(temperature);
        for sum in [here, &mut all] {
            sum.counted += 1;
            sum.usable_litres += judged.usable.map_or(0.0, Volume::as_litres);
            for one in &mut sum.minutes {
                let lasts = supply.lasts(pressure, one.device.usual);
                one.minutes = match (one.minutes, lasts) {
                    (Some(sum), Ok(lasts)) => Some(sum + u64::from(lasts.minutes)),
                    _ => None,
                };
            }
        }
    }
    (locations, all)
}
