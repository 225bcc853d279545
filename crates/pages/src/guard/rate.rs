//! How many pages one address may ask for.

use std::collections::HashMap;
use std::net::IpAddr;
use std::sync::{Mutex, PoisonError};
use std::time::{Duration, Instant};

/// What an address may ask for at once, and how fast that grows back: a page and its three files, twice a second.
const AT_ONCE: f64 = 120.0;
const A_SECOND: f64 = 8.0;
/// This machine, and a proxy, speak for many.
const FOR_MANY: f64 = 10.0;
/// As many addresses are remembered.
const REMEMBERED: usize = 4096;

/// What is left to each address.
pub(crate) struct Rate {
    left: Mutex<HashMap<IpAddr, (f64, Instant)>>,
    behind_proxy: bool,
}

impl Rate {
    pub(crate) fn new(behind_proxy: bool) -> Self {
        Self { left: Mutex::default(), behind_proxy }
    }

    /// Takes one, or says how many seconds to wait.
    pub(crate) fn take(&self, whose: IpAddr) -> Result<(), u64> {
        let many = if whose.is_loopback() || self.behind_proxy { FOR_MANY } else { 1.0 };
        let now = Instant::now();
        let mut left = self.left.lock().unwrap_or_else(PoisonError::into_inner);
        if left.len() >= REMEMBERED && !left.contains_key(&whose) {
            // Whoever has been away this long has all of theirs again.
            let away = Duration::from_secs(30);
            left.retain(|_, (_, seen)| now.duration_since(*seen) < away);
            if left.len() >= REMEMBERED {
                return Err(30);
            }
        }
        let (tokens, seen) = left.entry(whose).or_insert((AT_ONCE * many, now));
        *tokens = (*tokens + now.duration_since(*seen).as_secs_f64() * A_SECOND * many).min(AT_ONCE * many);
        *seen = now;
        if *tokens < 1.0 {
            return Err(1);
        }
        *tokens -= 1.0;
        Ok(())
    }
}
