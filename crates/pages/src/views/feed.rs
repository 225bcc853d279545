//! The round as a calendar that fetches itself: at an address nobody can guess, which can be renewed and taken away.

use std::sync::Arc;

use askama::Template;
use axum::extract::{Form, Path, State};
use axum::http::header::CONTENT_TYPE;
use axum::response::{IntoResponse, Response};
use calendar::{Calendar, of_round};
use jiff::civil::Time;
use store::{Moment, Store, StoreError};
use subtle::ConstantTimeEq;

use crate::App;
use crate::frame::{Frame, html};
use crate::guard::login::to;
use crate::guard::session::token;
use crate::trouble::Trouble;
use crate::visitor::{Typed, Visitor};
use crate::words::in_words;

/// The setting that holds the secret part of the address.
const SECRET: &str = "calendar";
/// How the address of the calendar ends.
const ENDING: &str = ".ics";
/// No alarm earlier than four weeks.
const LONGEST_ALARM: u32 = 40_320;

#[derive(Template)]
#[template(path = "feed.html")]
struct Page {
    frame: Frame,
    address: Option<String>,
    at: String,
    alarm: String,
    daily: bool,
    wrong: Vec<(&'static str, String)>,
}

impl Page {
    fn wrong_at(&self, field: &str) -> Option<&str> {
        self.wrong.iter().find(|(at, _)| *at == field).map(|(_, said)| said.as_str())
    }
}

/// How the calendar is wished.
#[derive(Default)]
struct Wish {
    hour: Option<Time>,
    alarm: Option<u32>,
    daily: bool,
    wrong: Vec<(&'static str, String)>,
}

impl Wish {
    fn of(visitor: &Visitor) -> Self {
        let mut wish = Self { daily: visitor.typed("daily").is_some(), ..Self::default() };
        if let Some(text) = visitor.typed("at") {
            match Time::strptime("%H:%M", text) {
                Ok(hour) => wish.hour = Some(hour),
                Err(_) => wish.wrong.push(("at", "Write the hour as hour:minute, such as 18:00.".to_owned())),
            }
        }
        if let Some(text) = visitor.typed("alarm") {
            match text.trim().parse().ok().filter(|minutes| *minutes <= LONGEST_ALARM) {
                Some(minutes) => wish.alarm = Some(minutes),
                None => wish.wrong.push(("alarm", format!("Write a whole number of minutes, {LONGEST_ALARM} at most."))),
            }
        }
        wish
    }

    /// As the end of the address says it.
    fn question(&self) -> String {
        let parts = [
            self.hour.map(|hour| format!("at={}", hour.strftime("%H:%M"))),
            self.alarm.map(|minutes| format!("alarm={minutes}")),
            self.daily.then(|| "daily=yes".to_owned()),
        ];
        let parts: Vec<String> = parts.into_iter().flatten().collect();
        if parts.is_empty() { String::new() } else { format!("?{}", parts.join("&")) }
    }
}

/// The page that says the address, and lets it be made, renewed and taken away.
pub(crate) async fn page(State(app): State<Arc<App>>, visitor: Visitor) -> Response {
    app.draw(visitor, |app, visitor| {
        let secret = app.stored(|store| store.setting(SECRET))?;
        let wish = Wish::of(visitor);
        let said = |name: &str| visitor.typed(name).unwrap_or_default().to_owned();
        html(&Page {
            frame: Frame::new(app, visitor, "Today", "The round in your calendar"),
            address: secret.map(|secret| format!("{}/calendar/{secret}{ENDING}{}", app.settings.seen_at(&visitor.host), wish.question())),
            at: said("at"),
            alarm: said("alarm"),
            daily: wish.daily,
            wrong: wish.wrong,
        })
    })
    .await
}

/// Makes a new address, so that the old one leads nowhere; or takes it away.
pub(crate) async fn renew(State(app): State<Arc<App>>, visitor: Visitor, Form(typed): Form<Typed>) -> Response {
    app.draw(visitor, move |app, _| {
        let secret = match typed.joined("away").as_str() {
            "" => Some(token().map_err(|error| Trouble::Fault(error.to_string()))?),
            _ => None,
        };
        let now = Moment::from(&app.now());
        app.stored(|store| store.set(SECRET, secret.as_deref(), now))?;
        Ok(to(format!("{}/calendar", app.settings.base_path.as_str())))
    })
    .await
}

/// The calendar, for whoever knows its address.
pub(crate) async fn feed(State(app): State<Arc<App>>, Path(name): Path<String>, visitor: Visitor) -> Response {
    app.draw(visitor, move |app, visitor| {
        let known = |store: &mut Store| Ok::<_, StoreError>((store.setting(SECRET)?, store.id()?));
        let (secret, id) = app.stored(known)?;
        let given = name.strip_suffix(ENDING).unwrap_or_default();
        if !secret.is_some_and(|secret| bool::from(secret.as_bytes().ct_eq(given.as_bytes()))) {
            return Err(Trouble::NotFound("There is no calendar at this address; it may have been renewed.".to_owned()));
        }
        let (shop, now, wish) = (app.source.shop()?, app.now(), Wish::of(visitor));
        let worked = app.plan(&shop, shop.units)?;
        let facts = app.kept(|kept| kept.facts(now.date()))?;
        let wanted = Calendar {
            zone: now.time_zone().clone(),
            hour: wish.hour,
            alarm_minutes: wish.alarm,
            daily: wish.daily,
            name: shop.name.clone(),
            id,
            now: now.timestamp(),
        };
        let text = of_round(&worked.report, &shop, &facts, &wanted).map_err(|error| Trouble::Unanswered(in_words(&error)))?;
        Ok(([(CONTENT_TYPE, "text/calendar; charset=utf-8")], text).into_response())
    })
    .await
}
