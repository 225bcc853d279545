//! Who has come in.

use std::collections::HashMap;
use std::sync::{Mutex, PoisonError};
use std::time::{Duration, Instant};

/// Nobody stays longer than this without coming in again, and nobody who has been away so long.
const LONGEST: Duration = Duration::from_secs(30 * 86_400);
const AWAY: Duration = Duration::from_secs(7 * 86_400);
/// More tablets and phones than any shop has.
const MOST: usize = 64;

/// How long a browser keeps the cookie.
pub(crate) const KEPT_SECONDS: u64 = LONGEST.as_secs();

/// Who has come in, by token.
#[derive(Default)]
pub(crate) struct Sessions(Mutex<HashMap<String, Session>>);

struct Session {
    began: Instant,
    seen: Instant,
}

/// Words nobody can guess: 256 bits from the system, in hexadecimal.
pub(crate) fn token() -> Result<String, getrandom::Error> {
    let mut bytes = [0_u8; 32];
    getrandom::fill(&mut bytes)?;
    Ok(bytes.iter().map(|byte| format!("{byte:02x}")).collect())
}

impl Sessions {
    /// Lets somebody in under a new token, whatever token they had: nobody can be made to come in under one that another knows.
    pub(crate) fn begin(&self, before: Option<&str>) -> Result<String, getrandom::Error> {
        let token = token()?;
        let now = Instant::now();
        let mut sessions = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some(before) = before {
            sessions.remove(before);
        }
        if sessions.len() >= MOST {
            let oldest = sessions.iter().min_by_key(|(_, session)| session.seen).map(|(token, _)| token.clone());
            oldest.map(|token| sessions.remove(&token));
        }
        sessions.insert(token.clone(), Session { began: now, seen: now });
        Ok(token)
    }

    /// Whether this token is somebody's who has come in.
    pub(crate) fn knows(&self, token: &str) -> bool {
        let now = Instant::now();
        let mut sessions = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        sessions.retain(|_, session| now.duration_since(session.began) < LONGEST && now.duration_since(session.seen) < AWAY);
        sessions.get_mut(token).map(|session| session.seen = now).is_some()
    }

    /// Shows somebody out.
    pub(crate) fn end(&self, token: &str) {
        self.0.lock().unwrap_or_else(PoisonError::into_inner).remove(token);
    }
}
