package varanid.intake.visit;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.thymeleaf.spring6.SpringTemplateEngine;
import org.thymeleaf.templatemode.TemplateMode;
import org.thymeleaf.templateresolver.ClassLoaderTemplateResolver;
import varanid.intake.platform.web.PdfWriter;

/** Writes summaries as pages without a running service, and keeps them under {@code target/pages} to be looked at. */
final class Pages {

    static final URI LINK = URI.create("https://intake.example.org/summary/vs1_9mE7zqW3rT5yU1iO0pA8sD6fG4hJ2kL");

    private static final SummaryPage PAGE = new SummaryPage(engine(), new HandOverTexts());
    private static final HtmlForm HTML = new HtmlForm(PAGE);
    private static final PdfForm PDF = new PdfForm(PAGE, new PdfWriter());

    private Pages() {}

    static String html(Summary summary, Optional<URI> link) {
        byte[] page = HTML.write(summary, link);
        keep(summary, "html", page);
        return new String(page, StandardCharsets.UTF_8);
    }

    static byte[] pdf(Summary summary, Optional<URI> link) {
        byte[] pdf = PDF.write(summary, link);
        keep(summary, "pdf", pdf);
        return pdf;
    }

    private static SpringTemplateEngine engine() {
        ClassLoaderTemplateResolver resolver = new ClassLoaderTemplateResolver();
        resolver.setPrefix("templates/");
        resolver.setSuffix(".html");
        resolver.setTemplateMode(TemplateMode.HTML);
        SpringTemplateEngine engine = new SpringTemplateEngine();
        engine.setTemplateResolver(resolver);
        return engine;
    }

    private static void keep(Summary summary, String ending, byte[] content) {
        try {
            Path folder = Files.createDirectories(Path.of("target", "pages"));
            String id = summary.animal().id().toString();
            Files.write(folder.resolve(id.substring(id.length() - 4) + "." + ending), content);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
