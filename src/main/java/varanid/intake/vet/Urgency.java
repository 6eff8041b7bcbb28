package varanid.intake.vet;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** The request-priority codes of HL7 FHIR, from what can wait to what cannot. */
final class Urgency {

    static final List<String> CODES = List.of("routine", "urgent", "asap", "stat");

    private static final int ASAP = CODES.indexOf("asap");

    private Urgency() {}

    /** How far up; a code that is not known comes before all. */
    static int rank(String code) {
        return CODES.indexOf(code);
    }

    /** The more urgent of the two; of equals the first. */
    static String max(String one, String other) {
        return rank(other) > rank(one) ? other : one;
    }

    /** The most urgent that is there. */
    static Optional<String> max(Stream<String> codes) {
        return codes.reduce(Urgency::max);
    }

    /** Whether it cannot wait longer than a day. */
    static boolean isSoon(String code) {
        return rank(code) >= ASAP;
    }
}
