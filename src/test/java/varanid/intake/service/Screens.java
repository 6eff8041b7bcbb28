package varanid.intake.service;

import static java.nio.file.StandardOpenOption.APPEND;
import static java.nio.file.StandardOpenOption.CREATE;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.deque.html.axecore.results.Rule;
import com.microsoft.playwright.Browser.NewContextOptions;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType.LaunchOptions;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Page.ScreenshotOptions;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.Playwright.CreateOptions;
import com.microsoft.playwright.PlaywrightException;
import com.microsoft.playwright.Response;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.Cookie;
import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Assumptions;

/**
 * A real Chromium, for tests of pages. Where the machine has none the tests say so aloud and are skipped; with {@code
 * -Dbrowser=required} they fail.
 *
 * <pre>{@code
 * @Test
 * void opens() {
 *     Client keeper = organisations.create().keeper();
 *     try (Screens.Screen screen = Screens.phone().signIn(organisation, keeper).open()) {
 *         screen.go("/animals");
 *         screen.page().getByRole(AriaRole.LINK, ...).click();
 *         screen.shows("animals");        // accessible, within its width, and kept as a picture
 *     }
 * }
 * }</pre>
 */
public final class Screens {

    /** Pictures of pages, for people to look at. */
    public static final Path PICTURES = Path.of("target", "screenshots");

    private static final List<String> RULES = List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa");
    private static final List<String> PROGRAMS =
            List.of("chromium", "chromium-browser", "google-chrome", "google-chrome-stable");

    private static final int PICTURE_TRIES = 3;

    /** What a page and all that it needs may weigh on the way, compressed, for one whose browser keeps nothing of it yet. */
    private static final int MOST_BYTES = 150_000;

    /** Cumulative layout shift; web.dev calls up to 0.1 good. */
    private static final double MOST_SHIFT = 0.02;

    private static @Nullable Started started;

    private record Started(Playwright driver, com.microsoft.playwright.Browser chromium) {}

    private final int width;
    private final int height;
    private final String name;
    private final boolean dark;
    private final boolean scripts;
    private final double textSize;
    private final @Nullable Browser signedIn;
    private final int port;

    private Screens(
            int width,
            int height,
            String name,
            boolean dark,
            boolean scripts,
            double textSize,
            @Nullable Browser signedIn,
            int port) {
        this.width = width;
        this.height = height;
        this.name = name;
        this.dark = dark;
        this.scripts = scripts;
        this.textSize = textSize;
        this.signedIn = signedIn;
        this.port = port;
    }

    /** What has just that name, for {@code getByRole}. */
    public static Page.GetByRoleOptions named(String name) {
        return new Page.GetByRoleOptions().setName(name).setExact(true);
    }

    /** What has just that label, for {@code getByLabel}. */
    public static Page.GetByLabelOptions exactly() {
        return new Page.GetByLabelOptions().setExact(true);
    }

    /** 360 by 740 pixels, light, with scripts. */
    public static Screens phone() {
        return new Screens(360, 740, "phone", false, true, 1, null, 0);
    }

    /** 1280 by 900 pixels, light, with scripts. */
    public static Screens desk() {
        return new Screens(1280, 900, "desk", false, true, 1, null, 0);
    }

    /** All that a page is looked at in: both sizes, both schemes. */
    public static Stream<Screens> all() {
        return Stream.of(phone(), phone().dark(), desk(), desk().dark());
    }

    /** All of that, and a phone with large text, and one without scripts. */
    public static Stream<Screens> everyWay() {
        return Stream.concat(all(), Stream.of(phone().largeText(), phone().withoutScripts()));
    }

    public Screens dark() {
        return new Screens(width, height, name + "-dark", true, scripts, textSize, signedIn, port);
    }

    public Screens withoutScripts() {
        return new Screens(width, height, name + "-without-scripts", dark, false, textSize, signedIn, port);
    }

    /** With text at twice its size. */
    public Screens largeText() {
        return new Screens(width, height, name + "-large-text", dark, scripts, 2, signedIn, port);
    }

    /** With the session of a person, got by a link as people get theirs. */
    public Screens signIn(Organisations.Organisation organisation, Client person) {
        return as(Browser.signedIn(organisation, person), person.port());
    }

    /** With the session of a browser that is signed in. */
    public Screens as(Browser browser, int port) {
        return new Screens(width, height, name, dark, scripts, textSize, browser, port);
    }

    /** To look at pages of the service at a port without a session. */
    public Screens at(int port) {
        return new Screens(width, height, name, dark, scripts, textSize, signedIn, port);
    }

    public Screen open() {
        com.microsoft.playwright.Browser chromium = chromium();
        NewContextOptions options = new NewContextOptions()
                .setViewportSize(width, height)
                .setColorScheme(dark ? ColorScheme.DARK : ColorScheme.LIGHT)
                .setHasTouch(name.startsWith("phone"))
                .setLocale("en-GB")
                .setBaseURL("http://127.0.0.1:" + port)
                .setJavaScriptEnabled(scripts)
                // To change the size of text, and for nothing else.
                .setBypassCSP(textSize > 1);
        BrowserContext context = chromium.newContext(options);
        if (signedIn != null) {
            give(context, signedIn, port);
        }
        return new Screen(this, context, context.newPage());
    }

    private static void give(BrowserContext context, Browser signedIn, int port) {
        signedIn.cookies()
                .forEach((name, value) ->
                        context.addCookies(List.of(new Cookie(name, value).setUrl("http://127.0.0.1:" + port))));
    }

    /** One window. What its page writes into the console as an error makes {@link #shows} fail. */
    public static final class Screen implements AutoCloseable {

        private final Screens how;
        private final BrowserContext context;
        private final List<String> errors = new ArrayList<>();
        private Page page;

        private Screen(Screens how, BrowserContext context, Page page) {
            this.how = how;
            this.context = context;
            this.page = listened(page);
        }

        private Page listened(Page to) {
            to.onPageError(errors::add);
            to.onConsoleMessage(message -> {
                // A refused address is told by the page itself; here it would be told again for each request.
                if (message.type().equals("error") && !message.text().startsWith("Failed to load resource")) {
                    errors.add(message.text());
                }
            });
            return to;
        }

        public Page page() {
            return page;
        }

        public BrowserContext context() {
            return context;
        }

        /** Another person's session in place of the one before; what the pages have stored stays. */
        public void signIn(Organisations.Organisation organisation, Client person) {
            context.clearCookies();
            give(context, Browser.signedIn(organisation, person), person.port());
        }

        public void go(String path) {
            Response reply = page.navigate(path);
            Assertions.assertTrue(
                    reply == null || reply.status() < 500, () -> path + " was answered with " + reply.status());
            if (how.textSize > 1) {
                // As a reader does who sets the text size of the browser: rem follows it, pixels do not.
                page.addStyleTag(
                        new Page.AddStyleTagOptions().setContent("html{font-size:" + how.textSize * 100 + "%}"));
            }
        }

        /** Closes the page and opens another with the same storage and cookies. */
        public void reopen() {
            page.close();
            page = listened(context.newPage());
        }

        /**
         * Asserts that the page is accessible, no wider than the window, light on the way, and stays where it was while it
         * loads, and keeps a picture of it.
         */
        public void shows(String title) {
            if (how.scripts && how.textSize == 1) {
                staysInPlace();
                isLight(title);
            }
            picture(title);
            fits();
            if (how.scripts) {
                accessible();
            }
            Assertions.assertEquals(List.of(), errors, "errors of the page " + page.url());
        }

        /**
         * Keeps a picture of the whole page. No test is about it: on a machine that is short of memory Chromium sometimes
         * cannot draw one, which is said and fails nothing.
         */
        public void picture(String title) {
            Path file = PICTURES.resolve(title + "-" + how.name + ".png");
            for (int tries = 1; tries <= PICTURE_TRIES; tries++) {
                try {
                    page.screenshot(new ScreenshotOptions().setFullPage(true).setPath(file));
                    return;
                } catch (PlaywrightException e) {
                    System.err.println("no picture " + file + " (try " + tries + "): "
                            + String.valueOf(e.getMessage())
                                    .lines()
                                    .skip(1)
                                    .findFirst()
                                    .orElse(""));
                }
            }
        }

        /** Nothing has to be scrolled sideways. */
        public void fits() {
            int wide = ((Number) page.evaluate("() => document.documentElement.scrollWidth")).intValue();
            Assertions.assertTrue(
                    wide <= how.width, page.url() + " is " + wide + " pixels wide, the window " + how.width);
        }

        /** Nothing has moved under the reader's finger, but for what follows on a tap or a key. */
        public void staysInPlace() {
            String moved = (String) page.evaluate("""
                    () => new Promise(done => {
                      let sum = 0;
                      const what = [];
                      new PerformanceObserver(list => {
                        for (const shift of list.getEntries()) {
                          if (shift.hadRecentInput) continue;
                          sum += shift.value;
                          for (const {node} of shift.sources) {
                            if (node && node.nodeType === 1) what.push(node.tagName + '.' + node.className + '#' + node.id);
                          }
                        }
                      }).observe({type: 'layout-shift', buffered: true});
                      requestAnimationFrame(() => requestAnimationFrame(
                          () => setTimeout(() => done(sum.toFixed(4) + ' ' + what.join(' ')))));
                    })""");
            double shift = Double.parseDouble(moved.substring(0, moved.indexOf(' ')));
            Assertions.assertTrue(
                    shift <= MOST_SHIFT,
                    page.url() + " has shifted by " + moved + ", at most " + MOST_SHIFT + " is not noticed");
        }

        /**
         * With the headers, which the browser counts too, and without what is asked while the page is used. The figures
         * are kept beside the pictures.
         */
        private void isLight(String title) {
            int bytes = ((Number) page.evaluate("""
                            () => ['navigation', 'resource'].flatMap(type => performance.getEntriesByType(type))
                                .filter(each => each.initiatorType !== 'fetch')
                                .reduce((sum, each) => sum + each.transferSize, 0)""")).intValue();
            note(bytes + " bytes " + title + "-" + how.name);
            Assertions.assertTrue(
                    bytes <= MOST_BYTES, page.url() + " weighs " + bytes + " bytes, at most " + MOST_BYTES);
        }

        private static void note(String line) {
            try {
                Files.createDirectories(PICTURES);
                Files.writeString(PICTURES.resolve("weights.txt"), line + "\n", CREATE, APPEND);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }

        /** The independent engine finds nothing. */
        public void accessible() {
            List<Rule> found = new AxeBuilder(page).withTags(RULES).analyze().getViolations();
            Assertions.assertEquals(
                    List.of(),
                    found.stream()
                            .map(rule -> rule.getId() + ": " + rule.getHelp() + " "
                                    + rule.getNodes().stream()
                                            .map(node -> node.getHtml() + " " + node.getFailureSummary())
                                            .toList())
                            .toList(),
                    page.url());
        }

        @Override
        public void close() {
            context.close();
        }
    }

    private static synchronized com.microsoft.playwright.Browser chromium() {
        if (started == null) {
            Optional<Path> program = findProgram();
            if (program.isEmpty()) {
                String message = "NO BROWSER: no Chromium was found (" + String.join(", ", PROGRAMS)
                        + " in PATH, or named by CHROMIUM). The pages are not tested in a browser.";
                if ("required".equals(System.getProperty("browser"))) {
                    Assertions.fail(message);
                }
                System.err.println("\n########\n" + message + "\n########\n");
                Assumptions.abort(message);
            }
            Playwright driver =
                    Playwright.create(new CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
            started = new Started(
                    driver,
                    driver.chromium()
                            .launch(new LaunchOptions()
                                    .setExecutablePath(program.orElseThrow())
                                    .setArgs(List.of("--no-sandbox", "--disable-dev-shm-usage", "--disable-gpu"))));
        }
        return started.chromium();
    }

    private static Optional<Path> findProgram() {
        @Nullable String named = System.getenv("CHROMIUM");
        if (named != null && !named.isBlank()) {
            return Optional.of(Path.of(named));
        }
        @Nullable String path = System.getenv("PATH");
        return Stream.of((path == null ? "" : path).split(File.pathSeparator))
                .flatMap(folder -> PROGRAMS.stream().map(program -> Path.of(folder, program)))
                .filter(Files::isExecutable)
                .findFirst();
    }
}
