package varanid.intake.assessment;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import varanid.intake.checklist.Catalogue;
import varanid.intake.measures.Temperature;
import varanid.intake.measures.TemperatureUnit;
import varanid.intake.platform.time.Present;
import varanid.intake.platform.web.Given;
import varanid.intake.platform.web.JsonFields;

/** A look that is to be kept, as it was sent. */
record NewAssessment(
        LookRequest look,
        Instant occurredAt,
        @Nullable Temperature skinTemperature,
        @Nullable String note,
        @Nullable UUID supersedes,
        @Nullable String reason,
        @Nullable FormSent form) {

    /**
     * The form a look was made with: one look is kept of it.
     *
     * @param key the form's own
     * @param sha256 of all that was sent, in hexadecimal
     */
    record FormSent(UUID key, String sha256) {}

    private static final BigDecimal FAR = new BigDecimal(200);
    private static final BigDecimal HOTTEST_SKIN_CELSIUS = Temperature.Place.SKIN.highestLikelyCelsius();

    NewAssessment with(LookRequest filled) {
        return new NewAssessment(filled, occurredAt, skinTemperature, note, supersedes, reason, form);
    }

    /**
     * @param known what is recorded about the animal: it holds where the request does not say otherwise
     * @param sha256 of the whole request, in hexadecimal
     */
    static Supplier<NewAssessment> read(
            JsonFields fields, Catalogue catalogue, Map<String, String> known, Present present, String sha256) {
        LookRequest look = LookRequest.read(fields, catalogue, known);
        look.mustBePublished(fields);
        Given<Instant> occurredAt = fields.pastInstant("occurredAt", present);
        Given<Temperature> skin = fields.object("skinTemperature", NewAssessment::readSkinTemperature);
        Given<String> note = fields.prose("note", 4000);
        Given<UUID> supersedes = fields.id("supersedes");
        Given<String> reason = fields.prose("reason", 1000)
                .check(
                        given -> fields.field("supersedes").isGiven(),
                        "is there, but nothing is corrected",
                        "supersedes beside it, or no reason");
        Given<UUID> formKey = fields.id("formKey");
        return () -> new NewAssessment(
                look,
                occurredAt.orElse(present.now()),
                skin.orNull(),
                note.orNull(),
                supersedes.orNull(),
                reason.orNull(),
                formKey.find().map(key -> new FormSent(key, sha256)).orElse(null));
    }

    private static Supplier<Temperature> readSkinTemperature(JsonFields fields) {
        Given<BigDecimal> value = fields.decimal("value", FAR.negate(), FAR, 2).required();
        Given<TemperatureUnit> unit = fields.choice("unit", List.of(TemperatureUnit.values()), TemperatureUnit::code)
                .required();
        boolean confirmed = fields.flag("confirmed").orElse(false);
        if (value.isGiven() && unit.isGiven() && !confirmed) {
            Temperature skin = new Temperature(value.get(), unit.get());
            if (skin.isProbablyFahrenheit(Temperature.Place.SKIN)) {
                value.fault(
                        "is more than a skin in Celsius ever is: probably read in Fahrenheit",
                        "unit [degF] if the thermometer shows Fahrenheit, or confirmed: true");
            } else if (skin.celsius().signum() < 0 || skin.celsius().compareTo(HOTTEST_SKIN_CELSIUS) > 0) {
                value.fault(
                        "is not a temperature that a living lizard's skin has",
                        "0 to " + HOTTEST_SKIN_CELSIUS.toPlainString() + " Cel, or confirmed: true");
            }
        }
        return () -> new Temperature(value.get(), unit.get());
    }
}
