package varanid.intake.cagecard;

import java.io.IOException;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.thymeleaf.ITemplateEngine;
import org.thymeleaf.context.Context;
import varanid.intake.platform.web.Markup;
import varanid.intake.platform.web.PdfWriter;
import varanid.intake.platform.web.QrCode;

/** Writes cards into their template: well-formed XML, so that the same serves a browser and the PDF. */
@Component
class CardPage {

    /** As many cards as an A4 page holds. */
    static final int ON_A_SHEET = 4;

    private static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm", Locale.ENGLISH);
    private static final int QR_PIXELS = 100;

    // What the paper has room for, in characters.
    private static final int MOST_OF_A_NAME = 40;
    private static final int MOST_OF_A_LINE = 90;
    private static final int MOST_OF_AN_ALERT = 110;
    /** From so many characters of what people wrote on, letters are smaller, and from so many on smaller still. */
    private static final int DENSE = 170;

    private static final int DENSEST = 330;

    /** Up to so many characters a title is set in the largest letters, and up to so many in the next. */
    private static final int LARGE = 12;

    private static final int MEDIUM = 26;

    private final ITemplateEngine templates;
    private final PdfWriter pdf;
    private final CardWords words;

    CardPage(ITemplateEngine templates, PdfWriter pdf, CardWords words) {
        this.templates = templates;
        this.pdf = pdf;
        this.words = words;
    }

    /** One card, on a page of its own size. */
    String html(CageCard card) {
        return write(page(card), false);
    }

    byte[] pdf(CageCard card) {
        return printed(write(page(card), true));
    }

    /** Cards of a room, several on a sheet. */
    String html(String room, List<CageCard> cards) {
        return write(page(room, cards), false);
    }

    byte[] pdf(String room, List<CageCard> cards) {
        return printed(write(page(room, cards), true));
    }

    private byte[] printed(String xhtml) {
        try {
            return pdf.write(xhtml, "/paper/cage-card-print.css");
        } catch (IOException e) {
            throw new IllegalStateException("the cards could not be written as PDF", e);
        }
    }

    private String write(PageView page, boolean paper) {
        return templates.process("cage-card", new Context(Locale.ENGLISH, Map.of("it", page, "paper", paper)));
    }

    private PageView page(CageCard card) {
        CardView view = view(card);
        return new PageView(words.page("card") + ": " + view.title(), "single", List.of(List.of(view)), words.page());
    }

    private PageView page(String room, List<CageCard> cards) {
        List<List<CardView>> sheets = new ArrayList<>();
        for (int from = 0; from < cards.size(); from += ON_A_SHEET) {
            sheets.add(cards.subList(from, Math.min(from + ON_A_SHEET, cards.size())).stream()
                    .map(this::view)
                    .toList());
        }
        return new PageView(words.page("cards", "room", name(room)), "sheets", sheets, words.page());
    }

    private CardView view(CageCard card) {
        String title = name(card.title());
        Optional<String> name = Optional.ofNullable(card.name()).map(CardPage::name);
        List<String> alerts = card.alerts().stream()
                .map(line -> cut(line.text(), MOST_OF_AN_ALERT))
                .toList();
        List<String> species = species(card);
        List<Fact> facts = facts(card);
        int written = Stream.of(alerts.stream(), Stream.of(title), name.stream(), species.stream(), said(facts))
                .flatMap(each -> each)
                .mapToInt(String::length)
                .sum();
        return new CardView(
                card.isolation().isStrict(),
                written < DENSE ? "" : written < DENSEST ? "dense" : "densest",
                card.isolation(),
                alerts,
                title,
                size(title),
                name.orElse(null),
                species,
                facts,
                isSaidAbove(card) ? "" : card.howSoon().from(),
                card.handling(),
                card.beforeOpening(),
                card.call() == null ? null : cut(card.call(), MOST_OF_A_LINE),
                QrCode.svg(
                        card.address().toString(),
                        words.page("qr", "address", card.address().toString()),
                        QR_PIXELS),
                card.address().toString(),
                words.page("printed", "when", moment(card.printedAt(), card.zone())));
    }

    private List<Fact> facts(CageCard card) {
        List<Fact> facts = new ArrayList<>();
        facts.add(new Fact(words.page("room"), name(card.room())));
        facts.add(new Fact(words.page("start"), card.quarantine().startText()));
        facts.add(new Fact(words.page("release"), card.quarantine().releaseText()));
        if (!isSaidAbove(card)) {
            facts.add(new Fact(words.page("how-soon"), cut(card.howSoon().headline(), MOST_OF_A_LINE)));
        }
        return facts;
    }

    /** Whether how soon a vet heads the card: on so little paper it is not said twice. */
    private static boolean isSaidAbove(CageCard card) {
        return card.alerts().stream().anyMatch(line -> line.code().equals(CardRules.STAT));
    }

    private List<String> species(CageCard card) {
        return card.species() == null
                ? List.of(words.page("species-unknown"))
                : Stream.of(Optional.of(card.species()), Optional.ofNullable(card.commonName()))
                        .flatMap(Optional::stream)
                        .map(CardPage::name)
                        .toList();
    }

    private static Stream<String> said(List<Fact> facts) {
        return facts.stream().map(Fact::said);
    }

    private static String size(String title) {
        int length = title.codePointCount(0, title.length());
        return length <= LARGE ? "large" : length <= MEDIUM ? "medium" : "small";
    }

    private static String moment(Instant at, ZoneId zone) {
        return MOMENT.format(at.atZone(zone));
    }

    private static String name(String text) {
        return cut(text, MOST_OF_A_NAME);
    }

    private static String cut(String text, int most) {
        return Markup.clean(CardRules.cut(text, most));
    }

    /** @param kind how the paper is divided: single or sheets */
    record PageView(String title, String kind, List<List<CardView>> sheets, Map<String, String> words) {}

    /** A card as it is printed: every value a text that only has to be escaped, but the drawing of the code. */
    record CardView(
            boolean strict,
            String dense,
            CageCard.Apart isolation,
            List<String> alerts,
            String title,
            String size,
            @Nullable String name,
            List<String> species,
            List<Fact> facts,
            String from,
            List<CageCard.Line> handling,
            List<CageCard.Line> before,
            @Nullable String call,
            String qr,
            String address,
            String printed) {}

    /** A line of a card: what, and what is said of it. */
    record Fact(String what, String said) {}
}
