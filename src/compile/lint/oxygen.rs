//! About how much oxygen a device gives at a flow, as far as the book says.

use crate::book::{Device, DeviceFlow, Rulebook};
use crate::quantity::{Flow, Percent};

/// Two devices whose shares of oxygen are no further apart than this, in per cent points, count as giving alike: the
/// rule of thumb for a cannula is no finer, and one text's 36 % is another's 35 %.
pub const ALIKE: f64 = 2.0;

/// About how much oxygen a rung gives, in per cent; `None` for a device of another book.
pub fn of(book: &Rulebook, rung: DeviceFlow) -> Option<f64> {
    Some(share(book.device(rung.device)?, rung.flow))
}

/// About how much oxygen a device gives at a flow, in per cent.
///
/// By its `oxygen-by-flow` where it has one, on straight lines between the rows. A mask that entrains gives the same
/// at every flow: the middle of its range. Any other gives from the low to the high end of its range over its flows.
pub fn share(device: &Device, flow: Flow) -> f64 {
    let flow = flow.as_litres_per_minute();
    let row = |(at, share): &(Flow, Percent)| (at.as_litres_per_minute(), share.as_percent());
    let low = device.oxygen.low.value().map_or(21.0, Percent::as_percent);
    let high = device.oxygen.high.value().map_or(100.0, Percent::as_percent);
    if let (Some(first), Some(last)) = (device.oxygen_by_flow.first(), device.oxygen_by_flow.last()) {
        let above = device
            .oxygen_by_flow
            .iter()
            .find(|(at, _)| at.as_litres_per_minute() >= flow);
        let below = device
            .oxygen_by_flow
            .iter()
            .rfind(|(at, _)| at.as_litres_per_minute() <= flow);
        return between(row(below.unwrap_or(first)), row(above.unwrap_or(last)), flow);
    }
    if device.entrains.is_some() {
        return f64::midpoint(low, high);
    }
    let least = device
        .flow
        .low
        .value()
        .unwrap_or(Flow::ZERO)
        .as_litres_per_minute();
    let most = device.flow.high.value().map_or(least, Flow::as_litres_per_minute);
    between((least, low), (most, high), flow)
}

/// On the straight line between two points; outside them, the nearer.
pub fn between((x0, y0): (f64, f64), (x1, y1): (f64, f64), x: f64) -> f64 {
    if x <= x0 || x1 <= x0 {
        return y0;
    }
    if x >= x1 {
        return y1;
    }
    y0 + (y1 - y0) * (x - x0) / (x1 - x0)
}
