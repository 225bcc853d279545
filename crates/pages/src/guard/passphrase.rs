//! The passphrase, kept only as what argon2id makes of it.

use argon2::{Algorithm, Argon2, Params, Version};
use subtle::ConstantTimeEq;

/// A shorter passphrase can be guessed; NIST SP 800-63B asks for 15 where it is the only factor.
const SHORTEST: usize = 15;
/// A longer one is a mistake, and only costs time.
const LONGEST: usize = 1024;
const BYTES: usize = 32;

/// A passphrase that can be compared with, but not read.
pub struct Passphrase {
    salt: [u8; 16],
    made: [u8; BYTES],
}

/// Why a passphrase is not taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum Weak {
    /// It can be guessed.
    #[error("the passphrase is shorter than {SHORTEST} letters; take four or five words that do not belong together")]
    Short,
    /// It is a mistake.
    #[error("the passphrase is longer than {LONGEST} bytes; check that it is the right file")]
    Long,
    /// The machine gives no random bytes, or not enough memory.
    #[error("this machine cannot keep a passphrase now")]
    Machine,
}

impl Passphrase {
    /// Keeps what argon2id makes of a passphrase; blanks and line ends around it do not count.
    ///
    /// # Errors
    /// [`Weak`].
    pub fn new(text: &str) -> Result<Self, Weak> {
        let text = text.trim();
        if text.chars().count() < SHORTEST {
            return Err(Weak::Short);
        }
        if text.len() > LONGEST {
            return Err(Weak::Long);
        }
        let mut salt = [0_u8; 16];
        getrandom::fill(&mut salt).map_err(|_| Weak::Machine)?;
        Ok(Self { salt, made: make(text, &salt).ok_or(Weak::Machine)? })
    }

    /// Whether this is it. Takes a while and much memory, on purpose.
    pub(crate) fn is(&self, text: &str) -> bool {
        let text = text.trim();
        text.len() <= LONGEST && make(text, &self.salt).is_some_and(|made| made.ct_eq(&self.made).into())
    }
}

impl std::fmt::Debug for Passphrase {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("Passphrase")
    }
}

/// Argon2id with 19 MiB and two passes, as the OWASP Password Storage Cheat Sheet recommends.
fn make(text: &str, salt: &[u8]) -> Option<[u8; BYTES]> {
    let params = Params::new(19 * 1024, 2, 1, Some(BYTES)).ok()?;
    let mut made = [0_u8; BYTES];
    Argon2::new(Algorithm::Argon2id, Version::V0x13, params).hash_password_into(text.as_bytes(), salt, &mut made).ok()?;
    Some(made)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_the_passphrase_itself_is_it_and_it_shows_nowhere() {
        let kept = Passphrase::new("kettle harbour nine owls\n").unwrap();
        assert!(kept.is("kettle harbour nine owls"));
        assert!(!kept.is("kettle harbour nine owl") && !kept.is(""));
        assert!(!format!("{kept:?}").contains("kettle"));
    }

    #[test]
    fn a_passphrase_that_can_be_guessed_is_refused() {
        assert_eq!(Passphrase::new("swordfish   \n").unwrap_err(), Weak::Short);
        assert_eq!(Passphrase::new(&"long ".repeat(1000)).unwrap_err(), Weak::Long);
    }
}
