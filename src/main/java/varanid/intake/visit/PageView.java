package varanid.intake.visit;

import java.net.URI;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import varanid.intake.platform.time.ReaderDates;
import varanid.intake.platform.web.Markup;
import varanid.intake.platform.web.QrCode;

/**
 * A summary as a page shows it: every value a text that only has to be escaped.
 *
 * @param brief whether it is so short that one column in a larger type holds it
 * @param about what it is, each a few words
 * @param reach whom to call about it; has to stand on the first page, however long what follows is
 * @param plot a drawing, or nothing
 * @param qr a drawing, or nothing where no link was made
 */
public record PageView(
        boolean brief,
        String title,
        String made,
        List<String> about,
        List<String> reach,
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

    private static final DateTimeFormatter OFFSET = DateTimeFormatter.ofPattern("xxx", Locale.ENGLISH);
    private static final int QR_PIXELS = 96;
    private static final int MANY = 3;
    /** Characters of statements that still fit one A4 page in one column. */
    private static final int BRIEF = 1_800;

    private static final Set<Basis> WITNESSED = Set.of(Basis.OBSERVED, Basis.MEASURED, Basis.REPORTED);
    /** What stands on a line with what is said of the same; other people's words do not. */
    private static final Set<Basis> RUNS_ON = Set.of(Basis.OBSERVED, Basis.RECORDED, Basis.COMPUTED);

    private static final String WEIGHING = "weighing";
    private static final String SIGN = "sign";
    private static final String CONTACT = "contact";

    /** @param unless who saw it all, and when, where a statement says nothing else */
    public record SectionView(String code, String title, String unless, List<StatementView> statements) {}

    /**
     * One line.
     *
     * @param label what all of it is about; empty where it is that of the line before, known in the same way
     */
    public record StatementView(String basis, String tag, String weight, String label, List<Item> items) {

        /** The label as it stands before what is said. */
        public String heading() {
            return label.endsWith("?") ? label : label + ":";
        }

        /**
         * @param before what stands between it and the one before
         * @param heading what it is about, where that is not what the line is about
         */
        public record Item(String before, String heading, String text, String about) {}

        StatementView unlabelled() {
            return new StatementView(basis, tag, weight, "", items);
        }

        /** The same said of something else first. */
        StatementView after(String earlier) {
            return new StatementView(basis, tag, weight, earlier + (earlier.endsWith("?") ? " " : ", ") + label, items);
        }

        /** With more said of the same. */
        StatementView and(StatementView next) {
            return with(next, "");
        }

        /** With something else on the same line. */
        StatementView andAlso(StatementView next) {
            return with(next, next.heading());
        }

        private StatementView with(StatementView next, String heading) {
            Item last = items.get(items.size() - 1);
            String said = last.about().isEmpty() ? last.text() : last.about();
            List<Item> all = new ArrayList<>(items);
            next.items.forEach(
                    item -> all.add(new Item(said.endsWith(".") ? " " : "; ", heading, item.text(), item.about())));
            return new StatementView(basis, tag, weight, label, all);
        }
    }

    /**
     * What many statements share.
     *
     * @param known when and by whom
     * @param qualifier what is to be known with all of them, or empty
     */
    private record Common(String known, String qualifier) {

        static final Common NOTHING = new Common("", "");

        String text() {
            return qualifier.isEmpty() ? known : known + " · " + qualifier;
        }
    }

    public record BasisView(String basis, String tag, String meaning) {}

    /** @param taken when and by whom, or nothing where only the day is known */
    public record WeightView(String on, String grams, String taken, String scale, String compared) {}

    /**
     * @param plot how large the weights are drawn
     * @param dates as its reader writes them
     */
    static PageView of(
            Summary summary, Optional<URI> link, HandOverTexts texts, WeightPlot.Size plot, ReaderDates dates) {
        return new Maker(summary, texts, plot, dates).make(link);
    }

    private static final class Maker {

        private final Summary summary;
        private final HandOverTexts texts;
        private final ZoneId zone;
        private final WeightPlot.Size plot;
        private final ReaderDates dates;

        Maker(Summary summary, HandOverTexts texts, WeightPlot.Size plot, ReaderDates dates) {
            this.plot = plot;
            this.dates = dates;
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
                            dates.shortDay(summary.weights().get(0).on()),
                            "last",
                            dates.shortDay(summary.weights()
                                    .get(summary.weights().size() - 1)
                                    .on()));
            return new PageView(
                    isBrief(),
                    clean(summary.animal().title()),
                    texts.say("made", "when", moment(summary.madeAt()), "zone", zone()),
                    about(),
                    reach(),
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
                    WeightPlot.svg(summary.weights(), plotTitle, plot, dates).orElse(null),
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

        private List<String> reach() {
            return summary.sections().stream()
                    .flatMap(each -> each.statements().stream())
                    .filter(statement -> statement.code().equals(CONTACT) && statement.basis() == Basis.REPORTED)
                    .map(statement -> texts.say("call", "whom", clean(statement.text())))
                    .toList();
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
            Common common = common(said);
            List<StatementView> shown = new ArrayList<>();
            @Nullable Statement before = null;
            for (Statement statement : said) {
                StatementView next = statement(statement, common);
                if (before != null && isAboutTheSame(before, statement)) {
                    // What happened at different times stays on lines of its own.
                    if (!section.history()
                            && RUNS_ON.contains(statement.basis())
                            && before.weight() == statement.weight()) {
                        next = shown.remove(shown.size() - 1).and(next);
                    } else {
                        next = next.unlabelled();
                    }
                } else if (before != null && areSigns(before, statement)) {
                    next = shown.remove(shown.size() - 1).andAlso(next);
                } else if (before != null
                        && shown.get(shown.size() - 1).items().size() == 1
                        && saysTheSame(before, statement)) {
                    next = next.after(shown.remove(shown.size() - 1).label());
                }
                shown.add(next);
                before = statement;
            }
            return new SectionView(
                    section.code(),
                    clean(section.title()),
                    common.equals(Common.NOTHING) ? "" : texts.say("unless", "what", clean(common.text())),
                    shown);
        }

        /** Whether both are signs that are not to be seen at once; those stand on lines of their own. */
        private static boolean areSigns(Statement before, Statement statement) {
            return before.code().equals(SIGN)
                    && statement.code().equals(SIGN)
                    && before.basis() == statement.basis()
                    && before.weight() == Statement.Weight.PLAIN
                    && statement.weight() == Statement.Weight.PLAIN;
        }

        private static boolean isAboutTheSame(Statement before, Statement statement) {
            return before.basis() == statement.basis() && before.label().equals(statement.label());
        }

        /** Whether two lines can be one: that neither food nor stool was seen is one thing to read. */
        private static boolean saysTheSame(Statement one, Statement other) {
            return one.weight() == Statement.Weight.SMALL
                    && other.weight() == Statement.Weight.SMALL
                    && one.basis() == other.basis()
                    && !one.label().isEmpty()
                    && !other.label().isEmpty()
                    && one.text().equals(other.text())
                    && Objects.equals(one.at(), other.at())
                    && Objects.equals(one.by(), other.by())
                    && Objects.equals(one.on(), other.on())
                    && Objects.equals(one.qualifier(), other.qualifier());
        }

        private boolean isInTable(Statement statement) {
            return statement.code().equals(WEIGHING)
                    && statement.at() != null
                    && summary.weights().stream().anyMatch(point -> point.at().equals(statement.at()));
        }

        /**
         * What at least three statements, and more than any other, say of when and by whom, and what is to be known with
         * all of them; nothing where another that was seen, measured or told says nothing of it, for it would seem to be
         * meant too.
         */
        private Common common(List<Statement> said) {
            if (said.stream()
                    .anyMatch(statement -> WITNESSED.contains(statement.basis())
                            && known(statement).isEmpty())) {
                return Common.NOTHING;
            }
            Map<String, List<Statement>> all = new LinkedHashMap<>();
            said.stream()
                    .filter(statement -> statement.at() != null || statement.on() != null && statement.by() != null)
                    .forEach(statement -> all.computeIfAbsent(known(statement), known -> new ArrayList<>())
                            .add(statement));
            return all.entrySet().stream()
                    .filter(entry -> entry.getValue().size() >= MANY)
                    .max(Comparator.comparing(entry -> entry.getValue().size()))
                    .map(entry -> new Common(entry.getKey(), sharedQualifier(entry.getValue())))
                    .orElse(Common.NOTHING);
        }

        private static String sharedQualifier(List<Statement> all) {
            Set<@Nullable String> qualifiers = new HashSet<>();
            all.forEach(statement -> qualifiers.add(statement.qualifier()));
            @Nullable String only = qualifiers.iterator().next();
            return qualifiers.size() == 1 && only != null ? only : "";
        }

        /** When and by whom. */
        private String known(Statement statement) {
            List<String> known = new ArrayList<>();
            if (statement.at() != null || statement.by() != null) {
                known.add(when(statement.at(), statement.by()));
            }
            if (statement.on() != null) {
                known.add(dates.shortDay(statement.on()));
            }
            return String.join(" · ", known);
        }

        private StatementView statement(Statement statement, Common common) {
            List<String> about = new ArrayList<>();
            String known = known(statement);
            boolean asTheOthers = !known.isEmpty() && known.equals(common.known());
            if (!known.isEmpty() && !asTheOthers) {
                about.add(known);
            }
            if (statement.qualifier() != null
                    && !(asTheOthers && statement.qualifier().equals(common.qualifier()))) {
                about.add(statement.qualifier());
            }
            return new StatementView(
                    statement.basis().code(),
                    texts.word("tag", statement.basis().code()),
                    statement.weight().code(),
                    clean(statement.label()),
                    List.of(new StatementView.Item("", "", clean(statement.text()), clean(String.join(" · ", about)))));
        }

        private String when(@Nullable Instant at, @Nullable String by) {
            String moment = at == null ? "" : moment(at);
            String who = by == null ? "" : clean(by);
            return moment.isEmpty() || who.isEmpty() ? moment + who : moment + ", " + who;
        }

        private WeightView weight(Summary.WeightPoint point) {
            Optional<Statement> said = saidOf(point);
            return new WeightView(
                    dates.shortDay(point.on()),
                    said.map(statement -> clean(statement.text()))
                            .orElseGet(() -> point.grams().stripTrailingZeros().toPlainString() + " g"),
                    said.map(statement -> when(statement.at(), statement.by())).orElse(""),
                    said.map(Statement::qualifier).map(Markup::clean).orElseGet(() -> texts.say("not-recorded")),
                    texts.word("compared", point.comparable() ? "yes" : "no"));
        }

        private Optional<Statement> saidOf(Summary.WeightPoint point) {
            return summary.sections().stream()
                    .filter(Summary.Section::history)
                    .flatMap(section -> section.statements().stream())
                    .filter(statement ->
                            statement.code().equals(WEIGHING) && point.at().equals(statement.at()))
                    .findFirst();
        }

        private String moment(Instant at) {
            return dates.shortMoment(at, zone);
        }

        private static String clean(String text) {
            return Markup.clean(text);
        }
    }
}
