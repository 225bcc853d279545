//! What stands around every page: its title, the five words, the footer; and the small pieces all pages are made of.

use std::fmt;
use std::sync::Arc;

use askama::Template;
use askama::filters::{Html, HtmlSafe, escape};
use axum::http::header::CONTENT_TYPE;
use axum::http::{HeaderValue, StatusCode};
use axum::response::{IntoResponse, Response};
use handling::Worked;
use percent_encoding::{AsciiSet, NON_ALPHANUMERIC, utf8_percent_encode};
use planner::verdict::Grade;
use reference::{Reference, Standing};
use units::System;

use crate::App;
use crate::assets::Assets;
use crate::trouble::Trouble;
use crate::visitor::{SYSTEMS, Visitor};

/// The five words, and the path of each.
const WORDS: [(&str, &str); 5] = [("Today", "/"), ("Shop", "/shop"), ("Ladder", "/ladder"), ("Cupboard", "/cupboard"), ("Bench", "/bench")];

/// What stands around a page.
pub(crate) struct Frame {
    pub title: String,
    /// Which of the five words the page belongs to.
    pub here: &'static str,
    /// The base path, before every address.
    pub base: String,
    /// The shop's name.
    pub shop: String,
    /// Where the visitor is, to come back to.
    pub back: String,
    /// The units the page is written in.
    pub units: System,
    /// Somebody is in and can leave.
    pub leaves: bool,
    pub read_only: bool,
    reference: &'static Reference,
}

impl Frame {
    pub(crate) fn new(app: &Arc<App>, visitor: &Visitor, here: &'static str, title: impl Into<String>) -> Self {
        let shop = app.source.shop().ok();
        let units = visitor.units.or_else(|| shop.as_ref().map(|shop| shop.units)).unwrap_or_default();
        Self {
            shop: shop.map_or_else(|| "Gallipot".to_owned(), |shop| shop.name.clone()),
            units,
            leaves: app.settings.passphrase.is_some(),
            ..Self::bare(app, visitor, here, title)
        }
    }

    /// For whoever has not come in: without the shop's name.
    pub(crate) fn bare(app: &Arc<App>, visitor: &Visitor, here: &'static str, title: impl Into<String>) -> Self {
        let base = app.settings.base_path.as_str().to_owned();
        let back = format!("{base}{}", visitor.at);
        Self {
            title: title.into(),
            here,
            base,
            shop: "Gallipot".to_owned(),
            back,
            units: visitor.units.unwrap_or_default(),
            leaves: false,
            read_only: app.settings.read_only,
            reference: app.reference,
        }
    }

    /// The five words: the word, its address, whether the page belongs to it.
    pub(crate) fn words(&self) -> Vec<(&'static str, String, bool)> {
        WORDS.iter().map(|(word, path)| (*word, format!("{}{path}", self.base), *word == self.here)).collect()
    }

    /// The address of one of our own files.
    pub(crate) fn asset(&self, name: &str) -> String {
        format!("{}{}", self.base, Assets::get().path(name))
    }

    /// The systems of units: the word, and whether it is the one in use.
    pub(crate) fn systems(&self) -> Vec<(&'static str, bool)> {
        SYSTEMS.iter().map(|(word, system)| (*word, *system == self.units)).collect()
    }

    /// A verdict: its mark, whose shape says it, and its word.
    pub(crate) fn verdict(&self, grade: &Grade) -> Piece {
        let name = mark(*grade);
        let word = grade.word();
        Piece(format!("<span class=\"verdict {name}\">{}{word}</span>", self.symbol(name)))
    }

    /// Whether something fits, as a verdict says it.
    pub(crate) fn fits(&self, fits: &bool) -> Piece {
        let (name, word) = if *fits { ("right", "fits") } else { ("wrong", "does not fit") };
        Piece(format!("<span class=\"verdict {name}\">{}{word}</span>", self.symbol(name)))
    }

    fn symbol(&self, name: &str) -> String {
        format!("<svg class=\"mark\" viewBox=\"0 0 16 16\" aria-hidden=\"true\"><use href=\"{}#{name}\"/></svg>", self.asset("marks.svg"))
    }

    /// A link to where a number comes from.
    pub(crate) fn cite(&self, key: &str) -> Piece {
        let words = match self.reference.sources.get(key) {
            Some(source) if source.standing == Standing::CommonPractice => short(&source.title, key == "common-practice"),
            Some(source) => short(&source.title, false),
            None if key == MAKER.0 => MAKER.1.to_owned(),
            None => key.to_owned(),
        };
        let (base, key, words) = (&self.base, escape(key, Html), escape(&words, Html));
        match (key, words) {
            (Ok(key), Ok(words)) => Piece(format!("<a class=\"cite\" href=\"{base}/sources#{key}\">{words}</a>")),
            _ => Piece(String::new()),
        }
    }

    /// The address of the account of one place.
    pub(crate) fn why(&self, need: &str) -> String {
        format!("{}/why/{}", self.base, encoded(need))
    }

    /// The address of a sheet of the bench with its fields filled in.
    pub(crate) fn sheet(&self, worked: &Worked) -> String {
        let given: Vec<String> = worked.given.iter().map(|(field, text)| format!("{}={}", encoded(field), encoded(text))).collect();
        format!("{}/bench/{}?{}", self.base, encoded(&worked.sheet), given.join("&"))
    }

    /// The address of what is known of a fluid.
    pub(crate) fn fluid(&self, key: &str) -> String {
        format!("{}/fluid/{}", self.base, encoded(key))
    }

    /// The address of a machine's chart.
    pub(crate) fn chart(&self, machine: &str) -> String {
        format!("{}/chart/{}", self.base, encoded(machine))
    }

    /// The address of the form that says more of a point than its button.
    pub(crate) fn more(&self, machine: &str, point: &str) -> String {
        format!("{}/done?machine={}&point={}", self.base, encoded(machine), encoded(point))
    }

    /// The address of the ladder without a fluid.
    pub(crate) fn without(&self, fluid: &str) -> String {
        format!("{}/ladder?without={}", self.base, encoded(fluid))
    }

    /// The name behind a key of a fluid, a class or a material.
    pub(crate) fn name_of(&self, key: &str) -> String {
        self.reference.name_of(key)
    }
}

/// The one ground that is no entry of the bibliography: its key, the words, and what is meant.
pub(crate) const MAKER: (&str, &str, &str) = (
    "maker",
    "the maker's instruction",
    "What your shop file says the machine's maker asks for. It takes precedence, and is checked all the same.",
);

/// The beginning of a citation, as far as it tells one from another.
fn short(title: &str, practice: bool) -> String {
    const LONGEST: usize = 48;
    if practice {
        return "common practice".to_owned();
    }
    let head = title.split([':', ';', ',']).next().unwrap_or(title);
    if head.chars().count() <= LONGEST {
        return head.to_owned();
    }
    let cut: String = head.chars().take(LONGEST).collect();
    format!("{}…", cut.rsplit_once(' ').map_or(cut.as_str(), |(words, _)| words))
}

/// The symbol of a grade.
pub(crate) fn mark(grade: Grade) -> &'static str {
    match grade {
        Grade::Right => "right",
        Grade::WillDo => "will-do",
        Grade::Wrong => "wrong",
        Grade::Harmful => "harmful",
    }
}

/// What stands as it is in an address or a cookie: the unreserved letters of RFC 3986.
const PLAIN: &AsciiSet = &NON_ALPHANUMERIC.remove(b'-').remove(b'_').remove(b'.').remove(b'~');

/// Text as one part of an address, or as the value of a cookie.
pub(crate) fn encoded(text: &str) -> String {
    utf8_percent_encode(text, PLAIN).to_string()
}

/// A piece of a page that is HTML already.
pub(crate) struct Piece(pub String);

impl fmt::Display for Piece {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl HtmlSafe for Piece {}

/// A template as the answer.
pub(crate) fn html(page: &impl Template) -> Result<Response, Trouble> {
    let text = page.render()?;
    Ok(([(CONTENT_TYPE, HeaderValue::from_static("text/html; charset=utf-8"))], text).into_response())
}

/// A page with a form that writes: to be filled in, or once more with what is wrong, so that nothing was written; a program learns that from the
/// status. A form that only asks is no such page: it has an answer whatever is typed, and says in it what it could not take.
pub(crate) fn form_html<W>(wrong: &[W], page: &impl Template) -> Result<Response, Trouble> {
    let status = if wrong.is_empty() { StatusCode::OK } else { StatusCode::UNPROCESSABLE_ENTITY };
    Ok((status, html(page)?).into_response())
}
