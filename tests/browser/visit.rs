//! A visit: server, browser and page for the length of one test.

use crate::driver::Driver;
use crate::faults;
use crate::server::Server;
use fantoccini::{Client, Locator};
use std::net::TcpStream;
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::time::Duration;

/// How long a page may take to show its first heading.
const PATIENCE: Duration = Duration::from_secs(20);

/// What a test holds of the page.
#[derive(Clone)]
pub(crate) struct Visit {
    pub(crate) client: Client,
    /// Where the page was opened.
    pub(crate) address: String,
    server: Arc<AtomicBool>,
}

impl Visit {
    /// Ends the server, as if the network were gone.
    pub(crate) fn lose_network(&self) {
        self.server.store(false, Ordering::Relaxed);
        let host = self
            .address
            .trim_start_matches("http://")
            .trim_end_matches('/');
        drop(TcpStream::connect(host));
        // Gone when it refuses.
        while TcpStream::connect(host).is_ok() {
            std::thread::yield_now();
        }
    }

    /// Waits until the program shows its heading.
    pub(crate) async fn started(&self) {
        let heading = self
            .client
            .wait()
            .at_most(PATIENCE)
            .for_element(Locator::Css("h1"))
            .await;
        heading.expect("a heading appears");
    }

    /// Keeps a picture of the page under the target folder.
    pub(crate) async fn picture(&self, name: &str) {
        let png = self.client.screenshot().await.expect("a picture is taken");
        std::fs::write(pictures().join(format!("{name}.png")), png).unwrap();
    }
}

/// Where pictures and printed pages are kept for people to look at.
pub(crate) fn pictures() -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("browser");
    std::fs::create_dir_all(&folder).unwrap();
    folder
}

/// A file that `cargo xtask test` has built.
pub(crate) fn built(name: &str) -> PathBuf {
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("..").join(name);
    file.canonicalize()
        .unwrap_or_else(|e| panic!("{name}: {e}; build it with `cargo xtask package`"))
}

/// Opens the served page, runs the test, and demands that nothing went wrong unseen.
pub(crate) async fn visit<F>(name: &str, test: impl FnOnce(Visit) -> F)
where
    F: Future<Output = ()> + Send + 'static,
{
    visit_with(name, &[], test).await;
}

/// The same in a browser with flags of the test's own.
pub(crate) async fn visit_with<F>(name: &str, flags: &[String], test: impl FnOnce(Visit) -> F)
where
    F: Future<Output = ()> + Send + 'static,
{
    serve(name, built("dist"), flags, test).await;
}

/// The same for a page in a folder of the test's own.
pub(crate) async fn visit_folder<F>(name: &str, folder: PathBuf, test: impl FnOnce(Visit) -> F)
where
    F: Future<Output = ()> + Send + 'static,
{
    serve(name, folder, &[], test).await;
}

async fn serve<F>(name: &str, folder: PathBuf, flags: &[String], test: impl FnOnce(Visit) -> F)
where
    F: Future<Output = ()> + Send + 'static,
{
    let server = Server::bind(folder, 0..1).unwrap();
    let (address, wanted) = (server.address(), Arc::new(AtomicBool::new(true)));
    let going = Arc::clone(&wanted);
    std::thread::spawn(move || server.run(&going));
    see(name, (address, flags), wanted, test).await;
}

/// The same for the page in one file, from the disk.
pub(crate) async fn visit_file<F>(name: &str, test: impl FnOnce(Visit) -> F)
where
    F: Future<Output = ()> + Send + 'static,
{
    let address = format!("file://{}", built("dist-single/thinwright.html").display());
    see(name, (address, &[]), Arc::default(), test).await;
}

async fn see<F>(
    name: &str,
    (address, flags): (String, &[String]),
    server: Arc<AtomicBool>,
    test: impl FnOnce(Visit) -> F,
) where
    F: Future<Output = ()> + Send + 'static,
{
    let driver = Driver::start();
    let visit = Visit {
        client: driver.open(flags).await,
        address,
        server,
    };
    let running = test(visit.clone());
    let (client, address) = (visit.client.clone(), visit.address.clone());
    // In a task of its own, so that the browser is closed even when the test fails.
    let outcome = tokio::spawn(async move {
        client.goto(&address).await.unwrap();
        running.await;
        faults::none_told(&client, &address).await;
    })
    .await;
    if outcome.is_err() {
        visit.picture(&format!("failed-{name}")).await;
    }
    visit.client.close().await.unwrap();
    if let Err(failure) = outcome {
        std::panic::resume_unwind(failure.into_panic());
    }
}
