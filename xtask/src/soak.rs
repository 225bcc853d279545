//! Asks a served shop for an hour, as a busy household would all day, and looks whether its memory stays as it was.

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::io::{Error, Read, Result, Write};
use std::net::{SocketAddr, TcpListener, TcpStream};
use std::path::Path;
use std::process::{Child, Command, ExitCode, Stdio};
use std::time::{Duration, Instant};

use crate::{cargo, root, run};

const MINUTES: u64 = 60;
/// Time between two questions: ten a second.
const APART: Duration = Duration::from_millis(100);
/// Time between two looks at the memory.
const LOOKS: Duration = Duration::from_secs(10);
/// Every so many questions a point is ticked off and the tick taken back.
const TICKS: usize = 30;
/// So many ask at once before the memory is looked at.
const AT_ONCE: usize = 4;
/// Memory may grow so much from after the warm-up to the end.
const GROWTH: f64 = 0.05;
/// Pages of every kind: what is kept, what is worked out, paper, and what programs read.
const PAGES: [&str; 18] = [
    "/",
    "/cupboard",
    "/ladder",
    "/ladder?budget=60&without=slideway-68",
    "/chart/lathe",
    "/why/lathe.bed-ways",
    "/fluid/slideway-68",
    "/work",
    "/cautions",
    "/shop",
    "/log",
    "/sources",
    "/bench/viscosity?fluid=slideway-68%2Chydraulic-32",
    "/bench/sweating?as=it-is",
    "/paper/chart?size=a4",
    "/paper/labels?size=letter",
    "/api/plan",
    "/api/round",
];

/// `cargo xtask soak [MINUTES]`.
pub(crate) fn soak(asked: &[&str]) -> ExitCode {
    let minutes = match asked {
        [] => Some(MINUTES),
        [minutes, ..] => minutes.parse().ok().filter(|minutes| *minutes > 0),
    };
    let Some(minutes) = minutes else {
        eprintln!("usage: cargo xtask soak [MINUTES]");
        return ExitCode::from(2);
    };
    let built = run(vec![("compile the program", cargo(&["build", "--release", "--package", "gallipot"]))]);
    if built != ExitCode::SUCCESS {
        return built;
    }
    match soaked(Duration::from_secs(60 * minutes)) {
        Ok((said, true)) => {
            eprintln!("{said}");
            ExitCode::SUCCESS
        }
        Ok((said, false)) => {
            eprintln!("{said}\n── soak: failed");
            ExitCode::FAILURE
        }
        Err(error) => {
            eprintln!("── soak: {error}");
            ExitCode::FAILURE
        }
    }
}

/// What was seen, and whether it is well.
fn soaked(long: Duration) -> Result<(String, bool)> {
    let target = std::env::var_os("CARGO_TARGET_DIR").map_or_else(|| root().join("target"), Into::into);
    let (program, folder) = (target.join("release").join("gallipot"), target.join("soak"));
    // Also reached when there is none yet.
    let _ = std::fs::remove_dir_all(&folder);
    std::fs::create_dir_all(&folder)?;
    let shop = folder.join("shed.gallipot");
    let imported = Command::new(&program).arg("import").arg(root().join("examples/alder-lock.toml")).arg(&shop).status()?;
    if !imported.success() {
        return Err(Error::other("the example cannot be kept"));
    }
    let mut served = Served::start(&program, &shop)?;
    served.ask_at_once()?;
    let mut seen = Seen::default();
    let (began, mut looked) = (Instant::now(), Instant::now());
    for number in 0_usize.. {
        if began.elapsed() >= long {
            break;
        }
        if number.is_multiple_of(TICKS) {
            let ticked = served.ask("POST", "/done", "machine=lathe&point=bed+ways")?;
            seen.answered(&ticked);
            if let Some(entry) = ticked.sent_to.as_deref().and_then(|to| to.split("entry=").nth(1)) {
                seen.answered(&served.ask("POST", "/undo", &format!("entry={entry}&back=%2F"))?);
            }
        }
        seen.answered(&served.ask("GET", PAGES[number % PAGES.len()], "")?);
        if looked.elapsed() >= LOOKS {
            looked = Instant::now();
            seen.memory.push(served.memory()?);
        }
        std::thread::sleep(APART.saturating_sub(seen.times.last().copied().unwrap_or_default()));
    }
    served.child.kill()?;
    Ok(seen.said(long))
}

/// A shop that is served.
struct Served {
    child: Child,
    at: SocketAddr,
}

/// An answer, as far as it matters here.
struct Answer {
    status: u16,
    sent_to: Option<String>,
    took: Duration,
}

impl Served {
    fn start(program: &Path, shop: &Path) -> Result<Self> {
        // Whoever took this port in between would be asked in its place, and answer wrongly.
        let at = TcpListener::bind("127.0.0.1:0")?.local_addr()?;
        let child = Command::new(program).arg("serve").arg(shop).args(["--address", &at.to_string()]).stdout(Stdio::null()).spawn()?;
        for _ in 0..100 {
            if TcpStream::connect(at).is_ok() {
                return Ok(Self { child, at });
            }
            std::thread::sleep(Duration::from_millis(50));
        }
        Err(Error::other("the server does not answer"))
    }

    fn ask(&self, method: &str, path: &str, form: &str) -> Result<Answer> {
        let (at, began) = (self.at, Instant::now());
        let mut stream = TcpStream::connect(at)?;
        stream.set_read_timeout(Some(Duration::from_secs(30)))?;
        write!(
            stream,
            "{method} {path} HTTP/1.1\r\nhost: {at}\r\norigin: http://{at}\r\nconnection: close\r\n\
             content-type: application/x-www-form-urlencoded\r\ncontent-length: {}\r\n\r\n{form}",
            form.len()
        )?;
        let mut text = Vec::new();
        stream.read_to_end(&mut text)?;
        let text = String::from_utf8_lossy(&text);
        let status = text.split(' ').nth(1).and_then(|status| status.parse().ok()).ok_or_else(|| Error::other("no answer"))?;
        let sent_to = text.lines().find_map(|line| line.strip_prefix("location: ")).map(str::to_owned);
        Ok(Answer { status, sent_to, took: began.elapsed() })
    }

    /// Asks for every page as a whole household does. What the server keeps for each of its threads is there from then on; asked by one alone,
    /// it starts another thread only by chance, now or in half an hour.
    fn ask_at_once(&self) -> Result<()> {
        let everything = || PAGES.iter().try_for_each(|page| self.ask("GET", page, "").map(drop));
        std::thread::scope(|scope| {
            let asking: Vec<_> = (0..AT_ONCE).map(|_| scope.spawn(everything)).collect();
            asking.into_iter().try_for_each(|one| one.join().unwrap_or_else(|_| Err(Error::other("who asked is gone"))))
        })
    }

    /// Resident memory in kB, as the kernel counts it.
    fn memory(&mut self) -> Result<u32> {
        let status = std::fs::read_to_string(format!("/proc/{}/status", self.child.id()))?;
        let line = status.lines().find_map(|line| line.strip_prefix("VmRSS:"));
        line.and_then(|line| line.trim().strip_suffix(" kB")?.parse().ok()).ok_or_else(|| Error::other("the server is gone"))
    }
}

#[derive(Default)]
struct Seen {
    statuses: BTreeMap<u16, u32>,
    times: Vec<Duration>,
    /// kB.
    memory: Vec<u32>,
}

impl Seen {
    fn answered(&mut self, answer: &Answer) {
        *self.statuses.entry(answer.status).or_default() += 1;
        self.times.push(answer.took);
    }

    fn said(mut self, long: Duration) -> (String, bool) {
        self.times.sort_unstable();
        let at = |hundredths: usize| self.times.get(self.times.len() * hundredths / 100).copied().unwrap_or_default();
        let tenth = (self.memory.len() / 10).max(1);
        let warm = self.memory.get(tenth..).filter(|rest| !rest.is_empty()).unwrap_or(&self.memory);
        let mean =
            |looks: &[u32]| looks.iter().copied().map(f64::from).sum::<f64>() / f64::from(u32::try_from(looks.len().max(1)).unwrap_or(1));
        let (first, last) = (mean(&warm[..tenth.min(warm.len())]), mean(&warm[warm.len().saturating_sub(tenth)..]));
        let growth = last / first - 1.0;
        let mut said = format!("{} minutes, {} questions:", long.as_secs() / 60, self.times.len());
        for (status, count) in &self.statuses {
            // Writing to a string cannot fail.
            let _ = write!(said, " {count} × {status}");
        }
        let _ = write!(
            said,
            "\nhalf answered within {:.1} ms, 99 of 100 within {:.1} ms\nmemory after the warm-up {first:.0} kB, at the end {last:.0} kB \
             ({:+.1} %), at most {} kB",
            at(50).as_secs_f64() * 1e3,
            at(99).as_secs_f64() * 1e3,
            growth * 100.0,
            self.memory.iter().max().copied().unwrap_or_default()
        );
        (said, growth <= GROWTH && self.statuses.keys().all(|status| *status < 400))
    }
}
