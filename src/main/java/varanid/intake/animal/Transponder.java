package varanid.intake.animal;

import com.fasterxml.jackson.annotation.JsonValue;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.Locale;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A transponder number, checked as far as it can be.
 *
 * @param number 15 digits where it is one of ISO 11784, else 9 or 10 letters and digits
 * @param standard what it could be checked against
 * @param issuer of an ISO number: who allots its first three digits
 */
@Schema(name = "Transponder")
record Transponder(
        String number, Standard standard, @Nullable Issuer issuer) {

    /**
     * 38 bits hold the identification (ISO 11784: bits 27 to 64), so the last twelve digits end here, well before the
     * twelve nines.
     */
    static final long LARGEST_IDENTIFICATION = (1L << 38) - 1;

    static final String RIGHT = "15 digits as ISO 11784 has them (three for a country or manufacturer, then at most "
            + LARGEST_IDENTIFICATION + "), or the 9 or 10 characters of an older chip";

    private static final Pattern ISO_FORM = Pattern.compile("\\d{15}");
    private static final Pattern OLD_FORM = Pattern.compile("[0-9A-Z]{9,10}");
    private static final long ANIMAL_FLAG = 1L << 63;

    /** What the number could be checked against. */
    enum Standard {
        ISO_11784("ISO 11784"),
        UNVERIFIED("non-ISO, unverified");

        private final String words;

        Standard(String words) {
            this.words = words;
        }

        @JsonValue
        String words() {
            return words;
        }
    }

    /** Who allots the first three digits. */
    enum Issuer {
        /** 001 to 899: a country, by its number in ISO 3166-1. */
        COUNTRY,
        /** 900 to 998: a manufacturer, by ICAR. From memory, widely repeated. */
        MANUFACTURER;

        @JsonValue
        String code() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /**
     * Reads a number; blanks and hyphens between its parts do not matter.
     *
     * @throws IllegalArgumentException where no chip in an animal can have it; the message says why
     */
    static Transponder parse(String text) {
        String number = text.replaceAll("[ \u00A0-]", "").toUpperCase(Locale.ROOT);
        if (ISO_FORM.matcher(number).matches()) {
            return iso(number);
        }
        if (OLD_FORM.matcher(number).matches()) {
            return new Transponder(number, Standard.UNVERIFIED, null);
        }
        throw new IllegalArgumentException("has " + number.length() + " characters that are no number of a known form");
    }

    private static Transponder iso(String number) {
        int prefix = Integer.parseInt(number.substring(0, 3));
        long identification = Long.parseLong(number.substring(3));
        if (prefix == 0) {
            throw new IllegalArgumentException("begins with 000, which is neither a country nor a manufacturer");
        }
        if (prefix == 999) {
            throw new IllegalArgumentException("begins with 999, which marks test devices");
        }
        if (identification > LARGEST_IDENTIFICATION) {
            throw new IllegalArgumentException("its last twelve digits do not fit into 38 bits");
        }
        return new Transponder(number, Standard.ISO_11784, prefix < 900 ? Issuer.COUNTRY : Issuer.MANUFACTURER);
    }

    /** The first three digits of an ISO number. */
    String prefix() {
        return number.substring(0, 3);
    }

    /**
     * The 64 bits on the air, bit 1 as the most significant: animal flag set, reserved bits and retagging counter zero.
     *
     * @throws IllegalStateException for a number that is not of ISO 11784
     */
    long bits() {
        if (standard != Standard.ISO_11784) {
            throw new IllegalStateException("not a number of ISO 11784");
        }
        return ANIMAL_FLAG | (Long.parseLong(prefix()) << 38) | Long.parseLong(number.substring(3));
    }
}
