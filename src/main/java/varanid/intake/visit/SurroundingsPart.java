package varanid.intake.visit;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import varanid.intake.enclosure.EnclosureReadings;
import varanid.intake.enclosure.SurroundingsWords;

/** What was read of the enclosure, beside the ranges for it. */
@Component
class SurroundingsPart implements PartReader {

    private static final int MOST_NOT_READ = 5;

    private final EnclosureReadings readings;
    private final HandOverTexts texts;

    SurroundingsPart(EnclosureReadings readings, HandOverTexts texts) {
        this.readings = readings;
        this.texts = texts;
    }

    @Override
    public Part part() {
        return Part.SURROUNDINGS;
    }

    @Override
    public List<Statement> read(Visit visit) {
        return readings.findWords(visit.organisationId(), visit.animalId(), visit.today())
                .map(this::said)
                .orElse(List.of());
    }

    private List<Statement> said(SurroundingsWords words) {
        List<Statement> said = new ArrayList<>();
        words.readings().forEach(read -> said.add(read(read)));
        words.advice().forEach(text -> said.add(Statement.of("advice", Basis.COMPUTED, texts.label("advice"), text)));
        words.facts()
                .forEach(fact -> said.add(
                        Statement.of("fact", Basis.RECORDED, fact.question(), HandOverTexts.plain(fact.value()))
                                .on(fact.on())
                                .qualified(fact.stale() ? texts.say("stale") : null)
                                .coded("enclosure-fact", fact.fact(), fact.value())
                                .weighing(Statement.Weight.SMALL)));
        if (!words.notRead().isEmpty()) {
            said.add(Statement.of(
                            "not-read",
                            Basis.RECORDED,
                            texts.label("not-read"),
                            words.notRead().stream()
                                    .limit(MOST_NOT_READ)
                                    .map(code -> texts.wordOr("quantity", code).toLowerCase(Locale.ROOT))
                                    .collect(Collectors.joining(", ")))
                    .weighing(Statement.Weight.SMALL));
        }
        return said;
    }

    private Statement read(SurroundingsWords.Read read) {
        List<String> about = new ArrayList<>();
        about.add(texts.wordOr("standing", read.standing()));
        read.ranges().forEach(range -> about.add(texts.say(range.kind(), "range", range(range, read.unit()))));
        if (read.stale()) {
            about.add(texts.say("stale"));
        }
        boolean workedOut = read.on().isEmpty();
        return Statement.of(
                        "reading",
                        workedOut ? Basis.COMPUTED : Basis.MEASURED,
                        texts.wordOr("quantity", read.quantity()),
                        plain(read.value()) + " " + unit(read.unit()))
                .on(read.on().orElse(null))
                .qualified(String.join("; ", about))
                .coded("enclosure-quantity", read.quantity(), null)
                .measured(read.value(), read.unit());
    }

    private String range(SurroundingsWords.Range range, String unit) {
        if (range.from().isPresent() && range.to().isPresent()) {
            return texts.say(
                            "between",
                            "from",
                            rounded(range.from().get()),
                            "to",
                            rounded(range.to().get()))
                    + " " + unit(unit);
        }
        return range.from()
                .map(from -> texts.say("from-on", "from", rounded(from) + " " + unit(unit)))
                .orElseGet(() -> texts.say("up-to", "to", rounded(range.to().orElseThrow()) + " " + unit(unit)));
    }

    /** Published in degrees Fahrenheit, most bounds have digits that nobody measured. */
    private static String rounded(BigDecimal bound) {
        return plain(bound.setScale(1, RoundingMode.HALF_EVEN));
    }

    private static String plain(BigDecimal value) {
        return value.stripTrailingZeros().toPlainString();
    }

    /** A UCUM code as people write it. */
    private static String unit(String code) {
        return switch (code) {
            case "Cel" -> "°C";
            case "K" -> "K";
            case "1" -> "";
            default -> code;
        };
    }
}
