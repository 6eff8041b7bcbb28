package varanid.intake.report;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * What is reported of an animal, all in all: of each field the latest statement that stands, with when it was told and
 * by whom. Treatments and bites are all there, in the order they were told: a later one says nothing of an earlier one.
 *
 * @param temperatures code of the place to the latest that was told of it
 */
@Schema(name = "StandingReports")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Standing(
        @Nullable Said<Told.Last> lastMeal,
        @Nullable Said<Told.Last> lastStool,
        @Nullable Said<Told.Last> lastUrate,
        @Nullable Said<Told.Last> lastDrink,
        @Nullable Said<String> diet,
        @Nullable Said<String> supplements,
        @Nullable Said<List<Told.Lamp>> lamps,
        Map<String, Said<Told.Warmth>> temperatures,
        @Nullable Said<Told.Journey> transport,
        @Nullable Said<Told.Coded> reproductiveState,
        List<Said<Told.Treatment>> treatments,
        @Nullable Said<Told.Coded> handlingRisk,
        List<Said<Told.Bite>> bites,
        @Nullable Said<List<String>> vulnerablePeople,
        @Nullable Said<Told.Consent> consent,
        @Nullable Said<String> spendingLimit,
        @Nullable Said<String> payer,
        @Nullable Said<List<String>> questions,
        @Nullable Said<Told.Contact> contact) {

    /**
     * A statement.
     *
     * @param at when it was told
     * @param on the local day of it
     * @param recordedBy who wrote it down
     * @param reportedBy who says so
     */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record Said<T>(
            T value,
            UUID reportId,
            Instant at,
            LocalDate on,
            UUID recordedBy,
            @Nullable String reportedBy) {}

    /** A report that stands. */
    record Kept(UUID id, Instant occurredAt, LocalDate localDate, UUID recordedBy, Told told) {

        <T> Said<T> said(T value) {
            return new Said<>(value, id, occurredAt, localDate, recordedBy, told.reportedBy());
        }
    }

    /** @param reports that stand, in the order they were told */
    static Standing of(List<Kept> reports) {
        Map<String, Said<Told.Warmth>> temperatures = new LinkedHashMap<>();
        reports.forEach(each ->
                each.told().temperatures().forEach((code, warmth) -> temperatures.put(code, each.said(warmth))));
        return new Standing(
                latest(reports, Told::lastMeal),
                latest(reports, Told::lastStool),
                latest(reports, Told::lastUrate),
                latest(reports, Told::lastDrink),
                latest(reports, Told::diet),
                latest(reports, Told::supplements),
                latest(reports, told -> filled(told.lamps())),
                temperatures,
                latest(reports, Told::transport),
                latest(reports, Told::reproductiveState),
                all(reports, Told::treatments),
                latest(reports, Told::handlingRisk),
                all(reports, Told::bites),
                latest(reports, told -> filled(told.vulnerablePeople())),
                latest(reports, Told::consent),
                latest(reports, Told::spendingLimit),
                latest(reports, Told::payer),
                latest(reports, told -> filled(told.questions())),
                latest(reports, Told::contact));
    }

    /** Which fields nobody has told anything of. */
    boolean isUntold(String field) {
        return switch (field) {
            case "lastMeal" -> lastMeal == null;
            case "lastStool" -> lastStool == null;
            case "lastUrate" -> lastUrate == null;
            case "lastDrink" -> lastDrink == null;
            case "diet" -> diet == null;
            case "supplements" -> supplements == null;
            case "lamps" -> lamps == null;
            case "temperatures" -> temperatures.isEmpty();
            case "transport" -> transport == null;
            case "reproductiveState" -> reproductiveState == null;
            case "treatments" -> treatments.isEmpty();
            case "handlingRisk" -> handlingRisk == null;
            case "bites" -> bites.isEmpty();
            case "vulnerablePeople" -> vulnerablePeople == null;
            case "consent" -> consent == null;
            case "spendingLimit" -> spendingLimit == null;
            case "payer" -> payer == null;
            case "questions" -> questions == null;
            case "contact" -> contact == null;
            default -> throw new IllegalArgumentException("no field of a report: " + field);
        };
    }

    private static <T> @Nullable Said<T> latest(List<Kept> reports, Function<Told, @Nullable T> field) {
        @Nullable Said<T> latest = null;
        for (Kept each : reports) {
            @Nullable T value = field.apply(each.told());
            if (value != null) {
                latest = each.said(value);
            }
        }
        return latest;
    }

    private static <T> List<Said<T>> all(List<Kept> reports, Function<Told, List<T>> field) {
        List<Said<T>> all = new ArrayList<>();
        reports.forEach(each -> field.apply(each.told()).forEach(value -> all.add(each.said(value))));
        return all;
    }

    private static <T> @Nullable List<T> filled(List<T> list) {
        return list.isEmpty() ? null : list;
    }
}
