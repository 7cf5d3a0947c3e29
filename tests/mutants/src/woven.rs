//! Which mutant is awake: the number in `OXYFOLIO_MUTANT`, none while the compiler evaluates.

use core::sync::atomic::{AtomicU32, Ordering};

static AWAKE: AtomicU32 = AtomicU32::new(u32::MAX);

#[inline(always)]
pub const fn on() -> u32 {
    core::intrinsics::const_eval_select((), none, awake)
}

#[inline(always)]
pub const fn is(number: u32) -> bool {
    on() == number
}

const fn none() -> u32 {
    0
}

#[inline(always)]
fn awake() -> u32 {
    match AWAKE.load(Ordering::Relaxed) {
        u32::MAX => asked(),
        number => number,
    }
}

#[cold]
fn asked() -> u32 {
    let asked = std::env::var("OXYFOLIO_MUTANT");
    let number = asked.ok().and_then(|text| text.parse().ok()).unwrap_or(0);
    AWAKE.store(number, Ordering::Relaxed);
    number
}
