package varanid.intake.vet;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;

/**
 * What a vet answered about an animal. All texts are the vet's own, as they were written.
 *
 * @param answeredAt when it was given; of two answers the one given later stands
 * @param recordedAt when it was kept
 * @param seenUpTo what was recorded up to this moment, its writer had seen
 * @param sawAnimal how the vet came to know of the animal
 * @param urgency how soon a vet, a request-priority code; nothing where the vet said nothing of it
 * @param isolation {@code standard} or {@code strict}; nothing where the vet said nothing of it
 * @param instructions to those who care for the animal
 * @param rulings what a cause of the quarantine clock means
 * @param quarantineUntil not released before
 * @param approvesRelease whether quarantine may end; false: the vet objects; nothing where the vet said nothing of it
 * @param words whatever else the vet wrote
 * @param confirmed whether a clinician of the organisation stands for its writer
 * @param confirmedAt since when; nothing where it is not confirmed
 * @param confirmedBy the clinician who confirmed it later; nothing where it was confirmed from the start
 * @param supersedes the earlier answer that it takes the place of; a confirmed one makes that count for nothing
 * @param recordedBy the clinician who wrote it with an account; nothing where it came by a link
 * @param linkId the link it came by; nothing where an account wrote it
 */
public record VetAnswer(
        UUID id,
        UUID animalId,
        Instant answeredAt,
        Instant recordedAt,
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
        boolean confirmed,
        Optional<Instant> confirmedAt,
        Optional<UUID> confirmedBy,
        Optional<UUID> supersedes,
        Optional<UUID> recordedBy,
        Optional<UUID> linkId) {

    /** The one given first comes first; of several at one moment the one kept first. */
    public static final Comparator<VetAnswer> IN_ORDER = Comparator.comparing(VetAnswer::answeredAt)
            .thenComparing(VetAnswer::recordedAt)
            .thenComparing(VetAnswer::id);

    public VetAnswer {
        findings = List.copyOf(findings);
        tests = List.copyOf(tests);
        rulings = List.copyOf(rulings);
        if (confirmed != confirmedAt.isPresent()) {
            throw new IllegalArgumentException("what is confirmed was confirmed at a moment");
        }
    }

    /** The same while nobody had confirmed it. */
    VetAnswer unconfirmed() {
        return new VetAnswer(
                id,
                animalId,
                answeredAt,
                recordedAt,
                seenUpTo,
                sawAnimal,
                urgency,
                isolation,
                findings,
                tests,
                instructions,
                rulings,
                quarantineUntil,
                approvesRelease,
                nextVisit,
                words,
                writer,
                false,
                Optional.empty(),
                Optional.empty(),
                supersedes,
                recordedBy,
                linkId);
    }

    /** How the vet came to know of the animal. */
    public enum SawAnimal {
        /** Had it in the hands. */
        EXAMINED,
        /** Was told of it, by telephone or with pictures. */
        HEARD_OF,
        /** Read what is recorded. */
        READ_ONLY;

        /** The word for it in data and requests. */
        public String code() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }

        static Optional<SawAnimal> find(String code) {
            return Arrays.stream(values())
                    .filter(each -> each.code().equals(code))
                    .findFirst();
        }
    }

    /** What the vet says of a finding. */
    public enum Verdict {
        CONFIRMED,
        /** Nobody had recorded it. */
        ADDED,
        /** It was recorded, and is not so. */
        REJECTED;

        /** The word for it in data and requests. */
        public String code() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /**
     * What the vet says of one finding.
     *
     * @param finding its id in the checklist; nothing where the vet found something that no checklist asks for
     * @param level the level that the vet says it has
     * @param words needed where there is no {@code finding}
     */
    public record FindingVerdict(
            Optional<String> finding, Verdict verdict, Optional<String> level, Optional<String> words) {
        public FindingVerdict {
            if (finding.isEmpty() && (verdict != Verdict.ADDED || words.isEmpty() || level.isPresent())) {
                throw new IllegalArgumentException("what no checklist asks for is added, in words");
            }
        }
    }

    /**
     * A test or sample that the vet took.
     *
     * @param words what was taken or done
     * @param result in words, where it is known
     */
    public record TestTaken(String words, Optional<LocalDate> on, Optional<String> result) {}

    /**
     * What a cause of the quarantine clock means.
     *
     * @param cause an id of {@code quarantine-policy.yaml}
     */
    public record CauseRuling(String cause, Ruling ruling) {}

    /** What a vet says that a cause does to the clock. */
    public enum Ruling {
        RESTARTS,
        RESTARTS_AFTER_TREATMENT,
        GOES_ON,
        WAS_NOTHING;

        /** The word for it in data and requests. */
        public String code() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    /**
     * Who wrote it, as the writer states. Nothing of it is checked.
     *
     * @param licenceStatement in which register, under which number, or however licences are stated where the vet works
     */
    public record Writer(String name, String practice, String licenceStatement, Optional<String> contact) {}
}
