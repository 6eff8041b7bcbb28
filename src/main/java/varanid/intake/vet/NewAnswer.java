package varanid.intake.vet;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import varanid.intake.platform.time.Present;
import varanid.intake.platform.web.Given;
import varanid.intake.platform.web.JsonFields;
import varanid.intake.vet.VetAnswer.CauseRuling;
import varanid.intake.vet.VetAnswer.FindingVerdict;
import varanid.intake.vet.VetAnswer.Ruling;
import varanid.intake.vet.VetAnswer.SawAnimal;
import varanid.intake.vet.VetAnswer.TestTaken;
import varanid.intake.vet.VetAnswer.Verdict;
import varanid.intake.vet.VetAnswer.Writer;

/**
 * An answer as it was sent.
 *
 * @param answeredAt nothing: now
 */
record NewAnswer(
        @Nullable Instant answeredAt,
        Instant seenUpTo,
        SawAnimal sawAnimal,
        Optional<String> urgency,
        Optional<String> isolation,
        List<FindingVerdict> findings,
        List<TestTaken> tests,
        Optional<String> instructions,
        List<CauseRuling> rulings,
        Optional<LocalDate> quarantineUntil,
        Optional<Boolean> approvesRelease,
        Optional<LocalDate> nextVisit,
        Optional<String> words,
        Writer writer,
        @Nullable UUID supersedes) {

    static final int LONGEST_INSTRUCTIONS = 8_000;
    static final int LONGEST_WORDS = 8_000;
    static final int LONGEST_REMARK = 1_000;
    static final int LONGEST_RESULT = 4_000;
    static final int MOST_FINDINGS = 100;
    static final int MOST_TESTS = 30;
    static final int MOST_RULINGS = 30;

    private static final int FURTHEST_YEARS = 5;

    /**
     * @param terms what findings, levels and causes there are
     * @param present the moment it is read at
     */
    static Supplier<NewAnswer> reader(JsonFields fields, Terms terms, Present present) {
        Given<Instant> answeredAt = fields.pastInstant("answeredAt", present);
        // Without the five minutes that other clocks are allowed: it would stand above what is recorded in those.
        Given<Instant> seenUpTo = fields.field("seenUpTo")
                .instant()
                .required()
                .check(
                        moment -> !moment.isAfter(present.now()),
                        "lies in the future",
                        "the moment at which the summary that the vet had read was made: " + present.now()
                                + " or earlier");
        if (answeredAt.isGiven() && seenUpTo.isGiven() && answeredAt.get().isBefore(seenUpTo.get())) {
            seenUpTo.fault("is later than the answer", "the moment of the answer or earlier");
        }
        Given<SawAnimal> saw = fields.choice("sawAnimal", List.of(SawAnimal.values()), SawAnimal::code);
        Given<String> urgency = fields.choice("urgency", Urgency.CODES, code -> code);
        Given<String> isolation =
                fields.choice("isolation", List.of(AnswerRules.STANDARD, AnswerRules.STRICT), code -> code);
        Given<List<FindingVerdict>> findings =
                fields.list("findings", MOST_FINDINGS, value -> value.object(verdict -> finding(verdict, terms)));
        findings.check(NewAnswer::eachOnce, "name a finding twice", "one verdict for each finding");
        Given<List<TestTaken>> tests =
                fields.list("tests", MOST_TESTS, value -> value.object(test -> test(test, present)));
        Given<String> instructions = fields.prose("instructions", LONGEST_INSTRUCTIONS);
        Given<List<CauseRuling>> rulings =
                fields.list("rulings", MOST_RULINGS, value -> value.object(ruling -> ruling(ruling, terms)));
        rulings.check(
                all -> all.stream().map(CauseRuling::cause).distinct().count() == all.size(),
                "name a cause twice",
                "one ruling for each cause");
        Given<LocalDate> until = near(fields.date("quarantineUntil"), present);
        Given<Boolean> approves = fields.flag("approvesRelease");
        Given<LocalDate> visit = near(fields.date("nextVisit"), present)
                .check(date -> !date.isBefore(present.today()), "lies in the past", "today or later");
        Given<String> words = fields.prose("words", LONGEST_WORDS);
        Given<Writer> writer = fields.object("writer", NewAnswer::writer).required();
        Given<UUID> supersedes = fields.id("supersedes");
        boolean saysSomething = urgency.isGiven()
                || isolation.isGiven()
                || findings.find().filter(all -> !all.isEmpty()).isPresent()
                || tests.find().filter(all -> !all.isEmpty()).isPresent()
                || instructions.isGiven()
                || rulings.find().filter(all -> !all.isEmpty()).isPresent()
                || until.isGiven()
                || approves.isGiven()
                || visit.isGiven()
                || words.isGiven();
        return () -> {
            if (!saysSomething) {
                throw new IllegalArgumentException("says nothing of the animal");
            }
            return new NewAnswer(
                    answeredAt.orNull(),
                    seenUpTo.get(),
                    saw.orElse(SawAnimal.READ_ONLY),
                    urgency.find(),
                    isolation.find(),
                    findings.orElse(List.of()),
                    tests.orElse(List.of()),
                    instructions.find(),
                    rulings.orElse(List.of()),
                    until.find(),
                    approves.find(),
                    visit.find(),
                    words.find(),
                    writer.get(),
                    supersedes.orNull());
        };
    }

    private static Given<LocalDate> near(Given<LocalDate> date, Present present) {
        LocalDate furthest = present.today().plusYears(FURTHEST_YEARS);
        return date.check(it -> !it.isAfter(furthest), "lies too far ahead", furthest + " or earlier");
    }

    private static boolean eachOnce(List<FindingVerdict> findings) {
        Set<String> named = new HashSet<>();
        return findings.stream().flatMap(said -> said.finding().stream()).allMatch(named::add);
    }

    private static Supplier<FindingVerdict> finding(JsonFields fields, Terms terms) {
        Given<String> finding = fields.text("finding", 100)
                .check(terms::isFinding, "is no finding of a checklist", "the id of a finding, or only words");
        Given<Verdict> verdict = fields.choice("verdict", Arrays.asList(Verdict.values()), Verdict::code)
                .required();
        Given<String> level = fields.text("level", 100);
        if (finding.isGiven()) {
            List<String> levels = terms.levels(finding.get());
            level.check(levels::contains, "is no level of that finding", "one of: " + String.join(", ", levels));
        }
        Given<String> words = fields.prose("words", LONGEST_REMARK);
        return () -> new FindingVerdict(finding.find(), verdict.get(), level.find(), words.find());
    }

    private static Supplier<TestTaken> test(JsonFields fields, Present present) {
        Given<String> words = fields.prose("words", LONGEST_REMARK).required();
        Given<LocalDate> on = fields.pastDate("on", present);
        Given<String> result = fields.prose("result", LONGEST_RESULT);
        return () -> new TestTaken(words.get(), on.find(), result.find());
    }

    private static Supplier<CauseRuling> ruling(JsonFields fields, Terms terms) {
        Given<String> cause =
                fields.choice("cause", terms.causes(), code -> code).required();
        Given<Ruling> ruling =
                fields.choice("ruling", List.of(Ruling.values()), Ruling::code).required();
        return () -> new CauseRuling(cause.get(), ruling.get());
    }

    private static Supplier<Writer> writer(JsonFields fields) {
        Given<String> name = fields.text("name", 200).required();
        Given<String> practice = fields.text("practice", 200).required();
        Given<String> licence = fields.text("licenceStatement", 500).required();
        Given<String> contact = fields.prose("contact", 500);
        return () -> new Writer(name.get(), practice.get(), licence.get(), contact.find());
    }
}
