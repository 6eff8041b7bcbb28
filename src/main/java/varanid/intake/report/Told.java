package varanid.intake.report;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import varanid.intake.measures.Temperature;

/**
 * What was told, in the words it was told in. Every part is optional.
 *
 * @param reportedBy who says so
 * @param temperatures code of the place to what was told
 * @param vulnerablePeople codes; {@code none} and {@code unknown} stand alone
 * @param questions each as it was asked
 * @param note what its writer adds about the report itself; not for the vet
 */
@Schema(name = "ReportTold")
@JsonInclude(JsonInclude.Include.NON_EMPTY)
public record Told(
        @Nullable String reportedBy,
        @Nullable Last lastMeal,
        @Nullable Last lastStool,
        @Nullable Last lastUrate,
        @Nullable Last lastDrink,
        @Nullable String diet,
        @Nullable String supplements,
        List<Lamp> lamps,
        Map<String, Warmth> temperatures,
        @Nullable Journey transport,
        @Nullable Coded reproductiveState,
        List<Treatment> treatments,
        @Nullable Coded handlingRisk,
        List<Bite> bites,
        List<String> vulnerablePeople,
        @Nullable Consent consent,
        @Nullable String spendingLimit,
        @Nullable String payer,
        List<String> questions,
        @Nullable Contact contact,
        @Nullable String note) {

    public Told {
        lamps = copy(lamps);
        temperatures = Objects.requireNonNullElse(temperatures, Map.of());
        treatments = copy(treatments);
        bites = copy(bites);
        vulnerablePeople = copy(vulnerablePeople);
        questions = copy(questions);
    }

    /**
     * When something was last seen.
     *
     * @param food what it ate; of a meal alone
     * @param on the day; worked out where {@code daysAgo} was told
     * @param daysAgo as told, counted back from the day of the report
     * @param unknown whether they said that nobody knows
     */
    @Schema(name = "ReportedLast")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record Last(
            @Nullable String food,
            @Nullable LocalDate on,
            @Nullable Integer daysAgo,
            @Nullable Boolean unknown,
            @Nullable String words) {

        boolean saysNothing() {
            return food == null && on == null && unknown == null && words == null;
        }
    }

    /**
     * @param place where it hung
     * @param type a code
     * @param words such as what is printed on it
     */
    @Schema(name = "ReportedLamp")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record Lamp(
            @Nullable String place,
            @Nullable String type,
            @Nullable Integer ageMonths,
            @Nullable String words) {

        boolean saysNothing() {
            return place == null && type == null && ageMonths == null && words == null;
        }
    }

    /**
     * @param value the number told
     * @param unit its UCUM code
     * @param celsius the same in degrees Celsius; rounded to four decimals where it was converted
     * @param confirmed whether the writer stands by an unlikely value
     */
    @Schema(name = "ReportedTemperature")
    public record Warmth(BigDecimal value, String unit, BigDecimal celsius, boolean confirmed) {

        static Warmth of(Temperature temperature, boolean confirmed) {
            return new Warmth(temperature.value(), temperature.unit().code(), temperature.celsius(), confirmed);
        }
    }

    /** How it travelled: hours under way, and words. */
    @Schema(name = "ReportedJourney")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record Journey(
            @Nullable BigDecimal hours, @Nullable String words) {}

    /** A code of {@code reports.yaml}, and words. */
    @Schema(name = "ReportedCode")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record Coded(String code, @Nullable String words) {}

    /**
     * Something already given to the animal.
     *
     * @param what as told, such as the words on the label
     * @param period when, where it was more than one day or nobody knows the day
     * @param amount as told; never worked with
     */
    @Schema(name = "ReportedTreatment")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record Treatment(
            String what,
            @Nullable String givenBy,
            @Nullable LocalDate on,
            @Nullable String period,
            @Nullable String why,
            @Nullable String amount) {}

    /**
     * A person hurt by the animal.
     *
     * @param who a description is enough; nothing where it was removed or not told
     * @param brokeSkin {@code yes}, {@code no} or {@code unknown}
     * @param doctorSeen the same
     */
    @Schema(name = "ReportedBite")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record Bite(
            @Nullable String who,
            @Nullable LocalDate on,
            @Nullable String bodyPart,
            String brokeSkin,
            String doctorSeen) {

        Bite with(@Nullable String person) {
            return new Bite(person, on, bodyPart, brokeSkin, doctorSeen);
        }
    }

    /**
     * @param by who may consent; nothing where it was removed or not told
     * @param given codes of what they agreed to; {@code none-yet} stands alone
     */
    @Schema(name = "ReportedConsent")
    @JsonInclude(JsonInclude.Include.NON_EMPTY)
    public record Consent(
            @Nullable String by,
            List<String> given,
            @Nullable String words) {

        public Consent {
            given = copy(given);
        }

        Consent with(@Nullable String person) {
            return new Consent(person, given, words);
        }

        boolean saysNothing() {
            return by == null && given.isEmpty() && words == null;
        }
    }

    /** Whom the vet can reach, and how. Nothing of it is dialled or sent to. */
    @Schema(name = "ReportedContact")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record Contact(
            @Nullable String name,
            @Nullable String phone,
            @Nullable String email,
            @Nullable String bestTime) {

        boolean saysNothing() {
            return name == null && phone == null && email == null && bestTime == null;
        }
    }

    /**
     * What of it is meant to say who somebody is.
     *
     * @param bitten place in {@code bites} to who it was
     */
    @JsonInclude(JsonInclude.Include.NON_EMPTY)
    record People(
            @Nullable String reportedBy,
            Map<Integer, String> bitten,
            List<String> vulnerablePeople,
            @Nullable String consentBy,
            @Nullable String payer,
            @Nullable Contact contact) {

        /** What is left of a report whose people were removed. */
        static final People NOBODY = new People(null, Map.of(), List.of(), null, null, null);

        People {
            bitten = Objects.requireNonNullElse(bitten, Map.of());
            vulnerablePeople = copy(vulnerablePeople);
        }

        boolean saysNothing() {
            return equals(NOBODY);
        }
    }

    People people() {
        Map<Integer, String> bitten = new LinkedHashMap<>();
        for (int i = 0; i < bites.size(); i++) {
            @Nullable String who = bites.get(i).who();
            if (who != null) {
                bitten.put(i, who);
            }
        }
        return new People(reportedBy, bitten, vulnerablePeople, consent == null ? null : consent.by(), payer, contact);
    }

    /** The same with these people in place of whoever is in it. */
    Told with(People people) {
        List<Bite> hurt = new ArrayList<>();
        for (int i = 0; i < bites.size(); i++) {
            hurt.add(bites.get(i).with(people.bitten().get(i)));
        }
        Consent decided = consent == null && people.consentBy() == null
                ? null
                : Objects.requireNonNullElse(consent, new Consent(null, List.of(), null))
                        .with(people.consentBy());
        return new Told(
                people.reportedBy(),
                lastMeal,
                lastStool,
                lastUrate,
                lastDrink,
                diet,
                supplements,
                lamps,
                temperatures,
                transport,
                reproductiveState,
                treatments,
                handlingRisk,
                hurt,
                people.vulnerablePeople(),
                decided == null || decided.saysNothing() ? null : decided,
                spendingLimit,
                people.payer(),
                questions,
                people.contact(),
                note);
    }

    private static <T> List<T> copy(@Nullable List<T> list) {
        return list == null ? List.of() : List.copyOf(list);
    }
}
