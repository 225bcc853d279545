//! Answers and shops made up of everything that can be said, as the bytes choose; where the bytes end, no more is said.

use fields::{Asks, Field, Kind};
use libfuzzer_sys::arbitrary::{Result, Unstructured};
use planner::needs::kinds;
use reference::Reference;
use shop::{Key, Known, MACHINE_KEYS, MAKER_KEYS, POINT_KEYS, POT_KEYS, ROOM_KEYS, SHOP_KEYS, Takes, WORK_KEYS};
use units::{Dimension, System, parse_any, show_base};

/// What is said to some of these fields.
pub fn answers(bytes: &mut Unstructured<'_>, fields: &[Field], reference: &Reference) -> Result<Vec<(&'static str, String)>> {
    let mut said = Vec::new();
    for field in fields {
        if !bytes.is_empty() && bytes.arbitrary()? {
            said.push((field.name, answer(bytes, field.asks, field.default, reference)?.join(", ")));
        }
    }
    Ok(said)
}

/// The words of an answer; of most kinds of answer there is one.
fn answer(bytes: &mut Unstructured<'_>, asks: Asks, default: &str, reference: &Reference) -> Result<Vec<String>> {
    let one = |word: &str| vec![word.to_owned()];
    Ok(match asks {
        Asks::Quantity(dimension) => vec![quantity(bytes, dimension, default)?],
        Asks::Number if bytes.arbitrary()? => one(&number(bytes)?),
        Asks::Number => one(&bytes.int_in_range(1..=20)?.to_string()),
        Asks::Flag => one(if bytes.arbitrary()? { "yes" } else { "no" }),
        Asks::Choice(of) => one(bytes.choose(of)?),
        Asks::Choices(of) => some(bytes, of)?,
        Asks::Name | Asks::File => vec![text(bytes, default)?],
        Asks::Materials => some(bytes, &keys(reference.materials.keys()))?,
        Asks::Fluids => some(bytes, &keys(reference.fluids.keys()))?,
    })
}

/// Near what is supposed, or anything.
fn quantity(bytes: &mut Unstructured<'_>, dimension: Dimension, default: &str) -> Result<String> {
    if let Ok(base) = parse_any(dimension, default)
        && bytes.ratio(3, 4)?
    {
        // Up to thirty times as much, or a thirtieth.
        let factor = 2_f64.powf(f64::from(bytes.int_in_range(-40..=40)?) / 8.0);
        return Ok(show_base(dimension, base * factor, System::Metric));
    }
    let number = number(bytes)?;
    Ok(format!("{number} {}", bytes.choose(&dimension.spellings())?))
}

/// Mostly of ordinary size.
fn number(bytes: &mut Unstructured<'_>) -> Result<String> {
    let digits = bytes.int_in_range(1..=999)?;
    Ok(match bytes.int_in_range(0..=7)? {
        7 => format!("{digits}e{}", bytes.int_in_range(-320..=308)?),
        6 => format!("{}", 1 - digits),
        power => format!("{digits}e{}", power - 3),
    })
}

/// One to three of them.
fn some(bytes: &mut Unstructured<'_>, of: &[&str]) -> Result<Vec<String>> {
    (0..bytes.int_in_range(1..=3)?).map(|_| Ok((*bytes.choose(of)?).to_owned())).collect()
}

/// What is supposed, or a few letters.
fn text(bytes: &mut Unstructured<'_>, default: &str) -> Result<String> {
    if !default.is_empty() && bytes.arbitrary()? {
        return Ok(default.to_owned());
    }
    let length = bytes.int_in_range(0..=24)?.min(bytes.len());
    Ok(String::from_utf8_lossy(bytes.bytes(length)?).into_owned())
}

/// Whether one thing of many is said; nothing is where the bytes have ended.
fn speaks(bytes: &mut Unstructured<'_>) -> Result<bool> {
    Ok(!bytes.is_empty() && bytes.ratio(1, 4)?)
}

fn keys<'a>(of: impl Iterator<Item = &'a String>) -> Vec<&'a str> {
    of.map(String::as_str).collect()
}

/// The file of a small shop.
pub fn shop(bytes: &mut Unstructured<'_>, reference: &Reference) -> Result<String> {
    let mut file = File { text: String::new(), reference, template: None };
    file.keys(bytes, SHOP_KEYS)?;
    if bytes.arbitrary()? {
        file.text += "[room]\n";
        file.keys(bytes, ROOM_KEYS)?;
    }
    for number in 0..bytes.int_in_range(0..=2)? {
        file.machine(bytes, number)?;
    }
    for number in 0..bytes.int_in_range(0..=2)? {
        let kind = *bytes.choose(kinds().jobs)?;
        file.text += &format!("[[work]]\nname = \"work {number}\"\njob = \"{}\"\n", kind.name);
        file.keys(bytes, &but(WORK_KEYS, &["name", "job"]))?;
        file.fields(bytes, kind)?;
    }
    for _ in 0..bytes.int_in_range(0..=2)? {
        let fluid = *bytes.choose(&keys(reference.fluids.keys()))?;
        file.text += &format!("[[pot]]\nfluid = \"{fluid}\"\n");
        file.keys(bytes, &but(POT_KEYS, &["fluid"]))?;
    }
    Ok(file.text)
}

fn but(keys: &[Key], names: &[&str]) -> Vec<Key> {
    keys.iter().filter(|key| !names.contains(&key.name)).copied().collect()
}

struct File<'r> {
    text: String,
    reference: &'r Reference,
    /// Of the machine that is being written.
    template: Option<&'r reference::Template>,
}

impl File<'_> {
    fn machine(&mut self, bytes: &mut Unstructured<'_>, number: usize) -> Result<()> {
        self.text += &format!("[[machine]]\nname = \"machine {number}\"\n");
        let templates: Vec<_> = self.reference.templates.values().collect();
        self.template = if bytes.arbitrary()? { Some(*bytes.choose(&templates)?) } else { None };
        if let Some(template) = self.template {
            self.text += &format!("template = \"{}\"\n", template.name);
            for (size, supposed) in &template.sizes {
                if speaks(bytes)? {
                    let dimension = Dimension::ALL.iter().find(|kind| parse_any(**kind, supposed).is_ok()).copied();
                    self.say(size, &quantity(bytes, dimension.unwrap_or(Dimension::Length), supposed)?);
                }
            }
        }
        self.keys(bytes, &but(MACHINE_KEYS, &["name", "template"]))?;
        let least = usize::from(self.template.is_none());
        for number in 0..bytes.int_in_range(least..=2)? {
            self.point(bytes, number)?;
        }
        Ok(())
    }

    fn point(&mut self, bytes: &mut Unstructured<'_>, number: usize) -> Result<()> {
        let mut kind = *bytes.choose(kinds().points)?;
        let mut name = format!("point {number}");
        if let Some(template) = self.template
            && bytes.arbitrary()?
        {
            let point = bytes.choose(&template.points)?;
            name.clone_from(&point.name);
            kind = kinds().points.iter().find(|kind| kind.name == point.kind).unwrap_or(&kind);
        }
        self.text += &format!("[[machine.point]]\nname = \"{name}\"\nkind = \"{}\"\n", kind.name);
        self.keys(bytes, &but(POINT_KEYS, &["name", "kind"]))?;
        self.fields(bytes, kind)?;
        if speaks(bytes)? {
            self.text += "[machine.point.maker]\n";
            self.keys(bytes, MAKER_KEYS)?;
        }
        Ok(())
    }

    fn keys(&mut self, bytes: &mut Unstructured<'_>, keys: &[Key]) -> Result<()> {
        for key in keys {
            if speaks(bytes)? {
                self.key(bytes, key)?;
            }
        }
        Ok(())
    }

    fn fields(&mut self, bytes: &mut Unstructured<'_>, kind: &Kind) -> Result<()> {
        for field in kind.fields {
            if field.is_required() || speaks(bytes)? {
                self.asked(bytes, field.name, field.asks, field.default)?;
            }
        }
        Ok(())
    }

    fn key(&mut self, bytes: &mut Unstructured<'_>, key: &Key) -> Result<()> {
        match key.takes {
            Takes::Asked(asks) => self.asked(bytes, key.name, asks, "")?,
            Takes::Text | Takes::File => self.say(key.name, "some words"),
            Takes::Amount => {
                let dimension = *bytes.choose(&[Dimension::Volume, Dimension::Mass, Dimension::Length])?;
                self.say(key.name, &quantity(bytes, dimension, "")?);
            }
            Takes::Day => {
                let (year, month) = (bytes.int_in_range(1..=9999_u16)?, bytes.int_in_range(1..=12_u8)?);
                self.say(key.name, &format!("{year:04}-{month:02}-{:02}", bytes.int_in_range(1..=31_u8)?));
            }
            Takes::Word(of) => {
                let word = *bytes.choose(&of())?;
                self.say(key.name, word);
            }
            Takes::Words(of) => self.list(key.name, &some(bytes, &of())?),
            Takes::One(known) => {
                let word = (*bytes.choose(&self.known(known))?).to_owned();
                self.say(key.name, &word);
            }
            Takes::Several(known) => self.list(key.name, &some(bytes, &self.known(known))?),
        }
        Ok(())
    }

    fn known(&self, known: Known) -> Vec<&str> {
        let reference = self.reference;
        match known {
            Known::Template => keys(reference.templates.keys()),
            Known::TemplatePoint => {
                self.template.map_or_else(|| vec!["none"], |template| keys(template.points.iter().map(|point| &point.name)))
            }
            Known::PointKind => kinds().points.iter().map(|kind| kind.name).collect(),
            Known::Job => kinds().jobs.iter().map(|kind| kind.name).collect(),
            Known::Climate => keys(reference.climates.keys()),
            Known::Currency => keys(reference.currencies.keys()),
            Known::Fluid => keys(reference.fluids.keys()),
            Known::FluidOrClass => keys(reference.fluids.keys().chain(reference.classes.keys())),
        }
    }

    fn asked(&mut self, bytes: &mut Unstructured<'_>, name: &str, asks: Asks, default: &str) -> Result<()> {
        // The letters of a name are read elsewhere; here they would only be refused.
        if matches!(asks, Asks::Name | Asks::File) {
            self.say(name, default);
            return Ok(());
        }
        let words = answer(bytes, asks, default, self.reference)?;
        match asks {
            Asks::Number => self.text += &format!("{name} = {}\n", words.concat()),
            Asks::Flag => self.text += &format!("{name} = {}\n", words.concat() == "yes"),
            Asks::Choices(_) | Asks::Materials | Asks::Fluids => self.list(name, &words),
            _ => self.say(name, &words.concat()),
        }
        Ok(())
    }

    /// No word here needs more than the quotation marks, but for a unit that is one.
    fn say(&mut self, name: &str, word: &str) {
        self.text += &format!("{name} = '''{word}'''\n");
    }

    fn list(&mut self, name: &str, words: &[String]) {
        self.text += &format!("{name} = {words:?}\n");
    }
}
