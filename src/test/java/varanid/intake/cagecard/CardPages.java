package varanid.intake.cagecard;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.thymeleaf.spring6.SpringTemplateEngine;
import org.thymeleaf.templatemode.TemplateMode;
import org.thymeleaf.templateresolver.ClassLoaderTemplateResolver;
import varanid.intake.platform.web.PdfWriter;

/** Writes cards as pages without a running service, and keeps them under {@code target/pages} to be looked at. */
final class CardPages {

    private static final CardPage PAGE = new CardPage(engine(), new PdfWriter(), CardFixtures.WORDS);

    private CardPages() {}

    static String html(CageCard card) {
        String html = PAGE.html(card);
        keep(name(card) + ".html", html.getBytes(StandardCharsets.UTF_8));
        return html;
    }

    static byte[] pdf(CageCard card) {
        byte[] pdf = PAGE.pdf(card);
        keep(name(card) + ".pdf", pdf);
        return pdf;
    }

    static String html(String room, List<CageCard> cards) {
        String html = PAGE.html(room, cards);
        keep("cards-" + cards.size() + ".html", html.getBytes(StandardCharsets.UTF_8));
        return html;
    }

    static byte[] pdf(String room, List<CageCard> cards) {
        byte[] pdf = PAGE.pdf(room, cards);
        keep("cards-" + cards.size() + ".pdf", pdf);
        return pdf;
    }

    private static String name(CageCard card) {
        return "card-" + CardRules.shortId(card.animalId());
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

    private static void keep(String file, byte[] content) {
        try {
            Files.write(Files.createDirectories(Path.of("target", "pages")).resolve(file), content);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
