//! One shop and how it is shown.

use std::sync::{Arc, Mutex};

use axum::response::Response;
use jiff::ZonedDateTime;
use keep::KeepError;
use planner::{Plan, Wishes};
use reference::Reference;
use shop::Shop;
use tokio::sync::Semaphore;
use units::System;

use crate::guard::Guard;
use crate::settings::{Settings, SettingsError};
use crate::source::{ShopSource, lock};
use crate::trouble::Trouble;
use crate::visitor::Visitor;
use crate::worked::{Worked, planned};

/// One shop and how it is shown.
pub struct App {
    pub(crate) source: ShopSource,
    pub(crate) settings: Settings,
    pub(crate) guard: Guard,
    pub(crate) reference: &'static Reference,
    plans: Mutex<Plans>,
    /// Room for those who draw.
    drawing: Arc<Semaphore>,
    log: fn(&str),
}

/// So many pages are drawn at once, each on a thread of its own. Every thread keeps memory that it once had, so that more of them make no page
/// come sooner on a small machine, and the server grow for hours.
pub(crate) const DRAWN_AT_ONCE: usize = 4;

/// What was worked out last, without wishes. Whoever needs something new waits for whoever is at it already.
#[derive(Default)]
struct Plans {
    /// Once for each system of units, as long as the shop and its log stay the same.
    worked: Vec<Arc<Worked>>,
    /// The plan of the kept shop behind them, which most entries of the log leave as it is, and the description it was worked out of.
    planned: Option<(String, Plan<'static>)>,
}

impl App {
    /// A shop to be shown so. What goes wrong is told to `log`, one line each, without anything a visitor typed.
    ///
    /// # Errors
    /// [`SettingsError::Open`] when others could come in without a passphrase.
    pub fn new(source: ShopSource, settings: Settings, log: fn(&str)) -> Result<Arc<Self>, SettingsError> {
        settings.check()?;
        let guard = Guard::new(&settings);
        let drawing = Arc::new(Semaphore::new(DRAWN_AT_ONCE));
        Ok(Arc::new(Self { source, settings, guard, reference: Reference::embedded(), plans: Mutex::default(), drawing, log }))
    }

    pub(crate) fn note(&self, text: &str) {
        (self.log)(text);
    }

    /// What day and time it is here.
    pub(crate) fn now(&self) -> ZonedDateTime {
        (self.settings.clock)()
    }

    /// The plan of this shop without wishes and what the day asks, worked out once for as long as shop, log and day stay the same.
    pub(crate) fn plan(&self, shop: &Arc<Shop>, units: System) -> Result<Arc<Worked>, Trouble> {
        let today = self.now().date();
        let is_of_today = |worked: &Arc<Worked>| match &worked.day {
            Some(Ok(day)) => day.round.today == today,
            Some(Err(_)) => false,
            None => true,
        };
        let of_this_shop = |worked: &Arc<Worked>| Arc::ptr_eq(&worked.shop, shop) && is_of_today(worked);
        let mut plans = lock(&self.plans);
        if let Some(found) = plans.worked.iter().find(|worked| of_this_shop(worked) && worked.units == units) {
            return Ok(Arc::clone(found));
        }
        let log = self.source.with(|kept| Ok::<_, KeepError>((kept.facts(today)?, kept.uses()?)));
        let log = log.transpose()?.transpose()?;
        let worked = Arc::new(self.planned(&mut plans.planned, shop, |plan| Worked::of(plan, shop, units, log.as_ref()))?);
        plans.worked.retain(of_this_shop);
        plans.worked.push(Arc::clone(&worked));
        Ok(worked)
    }

    /// Something out of the plan of this shop that no report has.
    pub(crate) fn of_plan<T>(&self, shop: &Arc<Shop>, take: impl FnOnce(&Plan<'static>) -> T) -> Result<T, Trouble> {
        self.planned(&mut lock(&self.plans).planned, shop, take)
    }

    /// Plans the shop, or takes the last plan where the description is still the same and the pots change no choice.
    fn planned<T>(
        &self,
        last: &mut Option<(String, Plan<'static>)>,
        shop: &Arc<Shop>,
        take: impl FnOnce(&Plan<'static>) -> T,
    ) -> Result<T, Trouble> {
        let anew = || planned(shop, self.reference, &Wishes::default());
        let now = self.source.now().and_then(Result::ok).filter(|now| Arc::ptr_eq(&now.shop, shop));
        let Some(now) = now else { return Ok(take(&anew()?)) };
        let typed = &now.described.typed;
        let weather = |shop: &Shop| shop.room.weather.as_ref().and_then(|file| file.text.clone());
        let stands = |(before, plan): &mut (String, Plan<'static>)| {
            before == typed && weather(&plan.shop) == weather(shop) && plan.take_pots(&shop.pots)
        };
        last.take_if(|held| !stands(held));
        let (_, plan) = match last {
            Some(held) => held,
            None => last.insert((typed.clone(), anew()?)),
        };
        Ok(take(plan))
    }

    /// Draws a page on a thread where it may take its time. A fault in the drawing costs that page, not the server. Whoever gives up while
    /// all draw leaves the queue; what is begun is drawn to its end, and takes its room until then.
    pub(crate) async fn draw<F>(self: Arc<Self>, visitor: Visitor, page: F) -> Response
    where
        F: FnOnce(&Arc<Self>, &Visitor) -> Result<Response, Trouble> + Send + 'static,
    {
        let (app, seen_by) = (Arc::clone(&self), visitor.clone());
        // Nobody closes it.
        let room = Arc::clone(&self.drawing).acquire_owned().await;
        let drawn = tokio::task::spawn_blocking(move || {
            let _room = room;
            let drawn = page(&app, &seen_by);
            if let Some(trouble) = app.source.backup_news() {
                app.note(&format!("the daily backup failed: {trouble}"));
            }
            drawn
        })
        .await;
        match drawn {
            Ok(Ok(response)) => response,
            Ok(Err(trouble)) => trouble.page(&self, &visitor),
            Err(_) => Trouble::Fault("a page could not be drawn".to_owned()).page(&self, &visitor),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::sync::atomic::{AtomicUsize, Ordering};
    use std::sync::mpsc;
    use std::time::Duration;

    use axum::http::StatusCode;
    use axum::response::IntoResponse;

    #[tokio::test]
    async fn whoever_gives_up_while_others_draw_leaves_the_queue() {
        static DRAWN: AtomicUsize = AtomicUsize::new(0);
        let settings = Settings::local(([127, 0, 0, 1], 0).into());
        let app = App::new(ShopSource::file("nowhere.toml".into()), settings, |_| {}).unwrap();
        let page = || Ok(StatusCode::OK.into_response());
        let mut ends = Vec::new();
        let mut drawing = Vec::new();
        for _ in 0..DRAWN_AT_ONCE {
            let (end, ended) = mpsc::channel::<()>();
            let draw = Arc::clone(&app).draw(Visitor::default(), move |_, _| {
                DRAWN.fetch_add(1, Ordering::SeqCst);
                let _ = ended.recv();
                page()
            });
            drawing.push(tokio::spawn(draw));
            ends.push(end);
        }
        while DRAWN.load(Ordering::SeqCst) < DRAWN_AT_ONCE {
            tokio::time::sleep(Duration::from_millis(5)).await;
        }
        let more = Arc::clone(&app).draw(Visitor::default(), move |_, _| {
            DRAWN.fetch_add(1, Ordering::SeqCst);
            page()
        });
        assert!(tokio::time::timeout(Duration::from_millis(50), more).await.is_err());
        drop(ends);
        for one in drawing {
            assert_eq!(one.await.unwrap().status(), StatusCode::OK);
        }
        let last = Arc::clone(&app).draw(Visitor::default(), move |_, _| page()).await;
        assert_eq!((last.status(), DRAWN.load(Ordering::SeqCst)), (StatusCode::OK, DRAWN_AT_ONCE));
    }
}
