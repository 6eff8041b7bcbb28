package varanid.intake.visit;

import java.net.URI;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import varanid.intake.platform.web.Markup;
import varanid.intake.platform.web.QrCode;

/**
 * A summary as a page shows it: every value a text that only has to be escaped.
 *
 * @param brief whether it is so short that one column in a larger type holds it
 * @param plot a drawing, or nothing
 * @param qr a drawing, or nothing where no link was made
 */
record PageView(
        boolean brief,
        String title,
        String made,
        List<String> about,
        List<String> alerts,
        String urgency,
        String headline,
        String from,
        String isolation,
        List<SectionView> sections,
        List<SectionView> history,
        List<BasisView> legend,
        @Nullable String plot,
        List<WeightView> weights,
        @Nullable String qr,
        String link,
        List<String> notices,
        Map<String, String> words) {

    static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm", Locale.ENGLISH);
    private static final DateTimeFormatter OFFSET = DateTimeFormatter.ofPattern("xxx", Locale.ENGLISH);
    private static final int QR_PIXELS = 96;
    private static final int MANY = 3;
    /** Characters of statements that still fit one A4 page in one column. */
    private static final int BRIEF = 1_800;

    private static final Set<Basis> WITNESSED = Set.of(Basis.OBSERVED, Basis.MEASURED, Basis.REPORTED);
    private static final String WEIGHING = "weighing";

    /** @param unless who saw it all, and when, where a statement says nothing else */
    record SectionView(String code, String title, String unless, List<StatementView> statements) {}

    /** @param label empty where it is that of the statement before, known in the same way */
    record StatementView(String basis, String tag, String weight, String label, String text, String about) {}

    record BasisView(String basis, String tag, String meaning) {}

    record WeightView(String on, String grams, String step, String compared) {}

    static PageView of(Summary summary, Optional<URI> link, HandOverTexts texts) {
        return new Maker(summary, texts).make(link);
    }

    private static final class Maker {

        private final Summary summary;
        private final HandOverTexts texts;
        private final ZoneId zone;

        Maker(Summary summary, HandOverTexts texts) {
            this.summary = summary;
            this.texts = texts;
            this.zone = summary.zone();
        }

        PageView make(Optional<URI> link) {
            Map<String, String> words = texts.page();
            String plotTitle = summary.weights().isEmpty()
                    ? ""
                    : texts.say(
                            "plot",
                            "count",
                            Integer.toString(summary.weights().size()),
                            "first",
                            summary.weights().get(0).on().toString(),
                            "last",
                            summary.weights()
                                    .get(summary.weights().size() - 1)
                                    .on()
                                    .toString());
            return new PageView(
                    isBrief(),
                    clean(summary.animal().title()),
                    texts.say("made", "when", moment(summary.madeAt()), "zone", zone()),
                    about(),
                    summary.alerts().stream().map(alert -> clean(alert.text())).toList(),
                    summary.standing().urgency() == null
                            ? "none"
                            : summary.standing().urgency(),
                    clean(summary.standing().headline()),
                    texts.word("from", summary.standing().from().code()),
                    clean(summary.standing().isolationText()),
                    summary.sections().stream()
                            .filter(section -> !section.history())
                            .map(this::section)
                            .toList(),
                    summary.sections().stream()
                            .filter(Summary.Section::history)
                            .map(this::section)
                            .toList(),
                    List.of(Basis.values()).stream()
                            .map(basis -> new BasisView(
                                    basis.code(), texts.word("tag", basis.code()), texts.word("basis", basis.code())))
                            .toList(),
                    WeightPlot.svg(summary.weights(), plotTitle).orElse(null),
                    summary.weights().stream().map(this::weight).toList(),
                    link.map(to -> QrCode.svg(to.toString(), texts.say("qr"), QR_PIXELS))
                            .orElse(null),
                    link.map(URI::toString).orElse(texts.say("no-link")),
                    summary.notices().stream().map(Markup::clean).toList(),
                    words);
        }

        private List<String> about() {
            Summary.Subject animal = summary.animal();
            List<String> about = new ArrayList<>();
            about.add(animal.species() == null ? texts.say("species-unknown") : clean(animal.species()));
            about.add(clean(animal.lifeStage()));
            about.add(clean(animal.sex()));
            if (animal.tag() != null) {
                about.add(texts.say("tag", "tag", clean(animal.tag())));
            }
            if (animal.transponder() != null) {
                about.add(texts.say("transponder", "number", clean(animal.transponder())));
            }
            return about;
        }

        private boolean isBrief() {
            return summary.sections().stream()
                            .flatMap(section -> section.statements().stream())
                            .mapToInt(statement -> statement.label().length()
                                    + statement.text().length())
                            .sum()
                    <= BRIEF;
        }

        /** Its offset from UTC beside its name, for a reader elsewhere. */
        private String zone() {
            return zone.getId() + ", UTC" + OFFSET.format(summary.madeAt().atZone(zone));
        }

        private SectionView section(Summary.Section section) {
            List<Statement> said = section.statements().stream()
                    .filter(statement -> !section.history() || !isInTable(statement))
                    .toList();
            Statement.@Nullable When common = common(said);
            List<StatementView> shown = new ArrayList<>();
            @Nullable Statement before = null;
            for (Statement statement : said) {
                boolean again = before != null
                        && before.basis() == statement.basis()
                        && before.label().equals(statement.label());
                shown.add(statement(statement, common, again));
                before = statement;
            }
            return new SectionView(
                    section.code(),
                    clean(section.title()),
                    common == null ? "" : texts.say("unless", "what", when(common.at(), common.by())),
                    shown);
        }

        private boolean isInTable(Statement statement) {
            return statement.code().equals(WEIGHING)
                    && statement.at() != null
                    && summary.weights().stream().anyMatch(point -> point.at().equals(statement.at()));
        }

        /**
         * What at least three statements, and more than any other, say of when and by whom; nothing where another that
         * was seen, measured or told says nothing of it, for it would seem to be meant too.
         */
        private static Statement.@Nullable When common(List<Statement> said) {
            if (said.stream()
                    .anyMatch(statement -> WITNESSED.contains(statement.basis())
                            && statement.at() == null
                            && statement.by() == null
                            && statement.on() == null)) {
                return null;
            }
            Map<Statement.When, Integer> counts = new LinkedHashMap<>();
            said.stream()
                    .filter(statement -> statement.at() != null)
                    .forEach(statement -> counts.merge(statement.when(), 1, Integer::sum));
            return counts.entrySet().stream()
                    .filter(entry -> entry.getValue() >= MANY)
                    .max(Map.Entry.comparingByValue())
                    .map(Map.Entry::getKey)
                    .orElse(null);
        }

        private StatementView statement(Statement statement, Statement.@Nullable When common, boolean again) {
            List<String> about = new ArrayList<>();
            if (!statement.when().equals(common)) {
                if (statement.at() != null || statement.by() != null) {
                    about.add(when(statement.at(), statement.by()));
                }
            }
            if (statement.on() != null) {
                about.add(statement.on().toString());
            }
            if (statement.qualifier() != null) {
                about.add(statement.qualifier());
            }
            return new StatementView(
                    statement.basis().code(),
                    texts.word("tag", statement.basis().code()),
                    statement.weight().code(),
                    again ? "" : clean(statement.label()),
                    clean(statement.text()),
                    clean(String.join(" · ", about)));
        }

        private String when(@Nullable Instant at, @Nullable String by) {
            String moment = at == null ? "" : moment(at);
            String who = by == null ? "" : clean(by);
            return moment.isEmpty() || who.isEmpty() ? moment + who : moment + ", " + who;
        }

        private WeightView weight(Summary.WeightPoint point) {
            return new WeightView(
                    point.on().toString(),
                    shown(point),
                    point.stepGrams() == null
                            ? texts.say("not-recorded")
                            : point.stepGrams().stripTrailingZeros().toPlainString() + " g",
                    texts.word("compared", point.comparable() ? "yes" : "no"));
        }

        /** As its statement says it. */
        private String shown(Summary.WeightPoint point) {
            return summary.sections().stream()
                    .filter(Summary.Section::history)
                    .flatMap(section -> section.statements().stream())
                    .filter(statement ->
                            statement.code().equals(WEIGHING) && point.at().equals(statement.at()))
                    .map(statement -> clean(statement.text()))
                    .findFirst()
                    .orElseGet(() -> point.grams().stripTrailingZeros().toPlainString() + " g");
        }

        private String moment(Instant at) {
            return MOMENT.format(at.atZone(zone));
        }

        private static String clean(String text) {
            return Markup.clean(text);
        }
    }
}
