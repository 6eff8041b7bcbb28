package varanid.intake.worklist;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** How soon a vet, from most to least. */
public enum Urgency {
    STAT,
    ASAP,
    URGENT,
    ROUTINE;

    /** The word for it in data and requests (HL7 FHIR request priority). */
    public String code() {
        return name().toLowerCase(Locale.ROOT);
    }

    public static Optional<Urgency> find(String code) {
        return Arrays.stream(values()).filter(each -> each.code().equals(code)).findFirst();
    }

    @Override
    public String toString() {
        return code();
    }
}
