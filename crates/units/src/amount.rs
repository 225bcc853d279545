//! How much of a fluid a pack or a pot holds.

use crate::{Length, Mass, MassDensity, Quantity, QuantityError, System, Volume, number, parse, show, show_exact, show_number, spelling};

/// A pack size: "1 L", "0.4 kg", "12 m" of tape, "5 pieces".
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Amount {
    /// Sold by volume.
    Volume(Volume),
    /// Sold by weight.
    Mass(Mass),
    /// Sold by length: tape, cord, solder wire.
    Length(Length),
    /// Sold by the piece: sheets, sticks, pads.
    Pieces(f64),
}

const PIECES: &[&str] = &["piece", "pieces", "pc", "pcs", "each", "ea"];
const NAME: &str = "an amount";
const FITS: &str = "mL, L, g, kg, m, fl oz(US), gal(US), oz, lb or pieces";

impl Amount {
    /// Reads an amount.
    ///
    /// # Errors
    /// [`QuantityError`] says what is wrong with the text and what would fit.
    pub fn parse(text: &str) -> Result<Self, QuantityError> {
        let text = text.trim();
        if text.is_empty() {
            return Err(QuantityError::Empty { name: NAME, fits: FITS.to_owned() });
        }
        let (count, unit) = number::leading(text).map_err(|fault| match fault {
            number::Fault::Missing => QuantityError::NoNumber { text: text.to_owned(), name: NAME, fits: FITS.to_owned() },
            other => parse::number_error::<Volume>(text, other),
        })?;
        if count < 0.0 {
            let limit = "0".to_owned();
            return Err(QuantityError::Outside { text: text.to_owned(), side: "less than", limit, name: NAME });
        }
        if unit.is_empty() {
            return Err(QuantityError::NoUnit { number: text.to_owned(), name: NAME, fits: FITS.to_owned(), example: "L" });
        }
        if PIECES.iter().any(|piece| spelling::same(piece, unit)) {
            return Ok(Self::Pieces(count));
        }
        if spelling::find::<Mass>(unit).is_some() {
            return parse(text).map(Self::Mass);
        }
        if spelling::find::<Length>(unit).is_some() {
            return parse(text).map(Self::Length);
        }
        parse(text).map(Self::Volume).map_err(|error| match error {
            QuantityError::WrongKind { unit, is, .. } => QuantityError::WrongKind { unit, is, name: NAME, fits: FITS.to_owned() },
            QuantityError::UnknownUnit { unit, nearest, .. } => {
                QuantityError::UnknownUnit { unit, nearest, name: NAME, fits: FITS.to_owned() }
            }
            other => other,
        })
    }

    /// Prints it in the units of a system.
    #[must_use]
    pub fn show(self, system: System) -> String {
        match self {
            Self::Volume(volume) => show(volume, system),
            Self::Mass(mass) => show(mass, system),
            Self::Length(length) => show(length, system),
            Self::Pieces(count) => pieces(&show_number(count, crate::Digits::Significant(6))),
        }
    }

    /// Prints it without loss.
    #[must_use]
    pub fn show_exact(self) -> String {
        match self {
            Self::Volume(volume) => show_exact(volume),
            Self::Mass(mass) => show_exact(mass),
            Self::Length(length) => show_exact(length),
            Self::Pieces(count) => pieces(&format!("{count}")),
        }
    }

    /// The volume, by the density where it is a mass; `None` for lengths, pieces and a density of nothing.
    #[must_use]
    pub fn in_volume(self, density: MassDensity) -> Option<Volume> {
        match self {
            Self::Volume(volume) => Some(volume),
            Self::Mass(mass) => (density.base() > 0.0).then(|| mass / density),
            Self::Length(_) | Self::Pieces(_) => None,
        }
    }

    /// The mass, by the density where it is a volume; `None` for lengths and pieces.
    #[must_use]
    pub fn in_mass(self, density: MassDensity) -> Option<Mass> {
        match self {
            Self::Mass(mass) => Some(mass),
            Self::Volume(volume) => Some(volume * density),
            Self::Length(_) | Self::Pieces(_) => None,
        }
    }
}

fn pieces(number: &str) -> String {
    let word = if number == "1" { "piece" } else { "pieces" };
    format!("{number} {word}")
}
