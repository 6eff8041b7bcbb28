package varanid.intake.animal;

import com.fasterxml.jackson.annotation.JsonValue;
import io.swagger.v3.oas.annotations.media.Schema;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import varanid.intake.platform.web.Given;
import varanid.intake.platform.web.JsonFields;

/**
 * A paper that came with the animal.
 *
 * @param kind what it is
 * @param number as it stands on the paper
 * @param issuedOn when it was issued
 * @param validUntil the last day it is good for
 */
@Schema(name = "Paper")
record Paper(
        Kind kind,

        @Schema(description = "as it stands on the paper", maxLength = 70) @Nullable
        String number,

        @Nullable LocalDate issuedOn,
        @Nullable LocalDate validUntil) {

    /** The CITES electronic permit toolkit has numbers of up to 70 characters. */
    private static final int LONGEST_NUMBER = 70;

    /** The form that Resolution Conf. 12.3 recommends, from memory: a hint, never a condition. */
    private static final Pattern RECOMMENDED = Pattern.compile("\\d{2}[A-Z]{2}\\d{6}/[0-9A-Z]{2}");

    /** The longest an export or re-export paper is good for: EU Regulation 865/2006. */
    private static final int EXPORT_MONTHS = 6;

    private static final int IMPORT_MONTHS = 12;

    enum Kind {
        CITES_EXPORT_PERMIT,
        CITES_RE_EXPORT_CERTIFICATE,
        CITES_IMPORT_PERMIT,
        CAPTIVE_BREEDING_RECORD,
        RECEIPT,
        SEIZURE_RECORD,
        OTHER;

        @JsonValue
        String code() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    Paper {
        if (issuedOn != null && validUntil != null && validUntil.isBefore(issuedOn)) {
            throw new IllegalArgumentException("ends on " + validUntil + ", before it was issued on " + issuedOn);
        }
    }

    static Supplier<Paper> reader(JsonFields fields) {
        Given<Kind> kind =
                fields.choice("kind", List.of(Kind.values()), Kind::code).required();
        Given<String> number = fields.text("number", LONGEST_NUMBER);
        Given<LocalDate> issued = fields.date("issuedOn");
        Given<LocalDate> until = fields.date("validUntil");
        return () -> new Paper(kind.get(), number.orNull(), issued.orNull(), until.orNull());
    }

    /** What a person should look at. */
    Optional<String> remark(@Nullable LocalDate arrivedOn) {
        if (validUntil != null && arrivedOn != null && validUntil.isBefore(arrivedOn)) {
            return Optional.of("it ended on " + validUntil + ", before the animal arrived on " + arrivedOn);
        }
        int months = longestMonths();
        if (months > 0 && issuedOn != null && validUntil != null && validUntil.isAfter(issuedOn.plusMonths(months))) {
            return Optional.of("it is good for longer than the " + months
                    + " months such a paper can be (EU Regulation 865/2006); look at the dates again");
        }
        if (isOfCites()
                && number != null
                && RECOMMENDED.matcher(number.toUpperCase(Locale.ROOT)).matches()) {
            return Optional.of("its number has the form that CITES recommends: year " + number.substring(0, 2)
                    + ", country " + number.substring(2, 4).toUpperCase(Locale.ROOT));
        }
        return Optional.empty();
    }

    private boolean isOfCites() {
        return kind == Kind.CITES_EXPORT_PERMIT
                || kind == Kind.CITES_RE_EXPORT_CERTIFICATE
                || kind == Kind.CITES_IMPORT_PERMIT;
    }

    private int longestMonths() {
        if (kind == Kind.CITES_IMPORT_PERMIT) {
            return IMPORT_MONTHS;
        }
        return isOfCites() ? EXPORT_MONTHS : 0;
    }
}
