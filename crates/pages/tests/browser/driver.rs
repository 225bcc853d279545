//! A Chromium without a window, driven over WebDriver, and the pages it looks at.

use std::io::{BufRead, BufReader};
use std::os::unix::process::CommandExt;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::sync::mpsc;

use fantoccini::wd::WebDriverCompatibleCommand;
use fantoccini::{Client, ClientBuilder};
use hyper::Method;
use hyper_util::client::legacy::connect::HttpConnector;
use jiff::ZonedDateTime;
use pages::{App, Settings, ShopSource, serve_until};
use planner::needs::kinds;
use reference::Reference;
use serde_json::{Value, json};
use store::{Moment, Store};
use tempfile::TempDir;
use tokio::sync::oneshot;
use url::Url;

const OPTIONS: [&str; 10] = [
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--disable-dev-shm-usage",
    "--hide-scrollbars",
];

/// The root of the repository.
pub fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

/// The pages of a shop on a free port, for as long as this lives.
pub struct Pages {
    pub address: String,
    /// Where a kept shop is.
    _folder: Option<TempDir>,
    end: Option<oneshot::Sender<()>>,
}

impl Pages {
    pub fn of(example: &str, settings: Settings) -> Self {
        Self::open(ShopSource::file(root().join("examples").join(example)), settings, None)
    }

    /// A kept shop: that of an example, or one of which nothing was said yet.
    pub fn kept(example: Option<&str>, settings: Settings) -> Self {
        let folder = tempfile::tempdir().unwrap();
        let mut store = Store::create(&folder.path().join("shop.gallipot")).unwrap();
        if let Some(example) = example {
            let text = std::fs::read(root().join("examples").join(example)).unwrap();
            store.import(&text, Reference::embedded(), kinds(), Moment::from(&ZonedDateTime::now())).unwrap();
        }
        Self::open(ShopSource::kept(store), settings, Some(folder))
    }

    fn open(source: ShopSource, settings: Settings, folder: Option<TempDir>) -> Self {
        let (tell, told) = mpsc::channel();
        let (end, ended) = oneshot::channel::<()>();
        let app = App::new(source, settings, |_| {}).unwrap();
        std::thread::spawn(move || {
            let end = async { ended.await.unwrap_or_default() };
            serve_until(&app, |address| tell.send(address.trim_end_matches('/').to_owned()).unwrap(), end).unwrap();
        });
        Self { address: told.recv().unwrap(), _folder: folder, end: Some(end) }
    }
}

impl Drop for Pages {
    fn drop(&mut self) {
        let _ = self.end.take().map(|end| end.send(()));
    }
}

/// A browser, for as long as this lives.
pub struct Browser {
    pub client: Client,
    driver: Child,
    _profile: TempDir,
}

impl Browser {
    pub async fn start() -> Self {
        let mut command = Command::new("chromedriver");
        // A group of its own, so that a test that fails can end the browser with its driver, and nothing else.
        command.arg("--port=0").stdout(Stdio::piped()).stderr(Stdio::null()).process_group(0);
        let mut driver = command.spawn().unwrap();
        let mut lines = BufReader::new(driver.stdout.take().unwrap()).lines().map_while(Result::ok);
        let port = lines.find_map(|line| Some(line.split("successfully on port ").nth(1)?.trim_end_matches('.').to_owned())).unwrap();
        let profile = tempfile::tempdir().unwrap();
        let mut arguments: Vec<String> = OPTIONS.map(str::to_owned).into();
        arguments.push(format!("--user-data-dir={}", profile.path().display()));
        let options = json!({ "args": arguments });
        let mut builder = ClientBuilder::new(HttpConnector::new());
        builder.capabilities([("goog:chromeOptions".to_owned(), options)].into_iter().collect());
        let client = builder.connect(&format!("http://127.0.0.1:{port}")).await.unwrap();
        Self { client, driver, _profile: profile }
    }

    /// Has the browser do what only its own protocol can, and gives back its answer.
    pub async fn tell(&self, command: &'static str, with: Value) -> Value {
        self.client.issue_cmd(Tell { command, with }).await.unwrap()
    }

    /// Makes the window so wide and high, with the theme of that name.
    pub async fn look(&self, width: u32, height: u32, theme: &str) {
        let size = json!({ "width": width, "height": height, "deviceScaleFactor": 1, "mobile": width < 500 });
        self.tell("Emulation.setDeviceMetricsOverride", size).await;
        let media = json!({ "features": [{ "name": "prefers-color-scheme", "value": theme }] });
        self.tell("Emulation.setEmulatedMedia", media).await;
    }

    pub async fn run(&self, script: &str) -> Value {
        self.client.execute(script, Vec::new()).await.unwrap()
    }

    pub async fn close(self) {
        let _ = self.client.clone().close().await;
    }
}

impl Drop for Browser {
    fn drop(&mut self) {
        // A test that failed has not closed it, and a browser outlives its driver. The driver is not waited for before, so that its number
        // is still that of its group.
        let _ = Command::new("kill").args(["-KILL", "--", &format!("-{}", self.driver.id())]).status();
        let _ = self.driver.wait();
    }
}

#[derive(Debug)]
struct Tell {
    command: &'static str,
    with: Value,
}

impl WebDriverCompatibleCommand for Tell {
    fn endpoint(&self, base: &Url, session: Option<&str>) -> Result<Url, url::ParseError> {
        base.join(&format!("session/{}/goog/cdp/execute", session.unwrap_or_default()))
    }

    fn method_and_body(&self, _: &Url) -> (Method, Option<String>) {
        (Method::POST, Some(json!({ "cmd": self.command, "params": self.with }).to_string()))
    }
}
