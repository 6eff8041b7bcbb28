package varanid.intake.enclosure;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.parameters.RequestBody;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.math.BigDecimal;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.http.ResponseEntity;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import varanid.intake.animal.Animals;
import varanid.intake.platform.time.Present;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.Items;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.Once;
import varanid.intake.platform.web.Page;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.Query;
import varanid.intake.platform.web.Reply;
import varanid.intake.platform.web.Role;

@RestController
@RequestMapping("/api/v1/animals/{animalId}/enclosure-readings")
@Tag(
        name = "Surroundings",
        description = "Warmth, moisture, light and set-up of the place an animal is kept in, and what they say")
class EnclosureReadingController {

    private final EnclosureReadingRows rows;
    private final EnclosureReadings readings;
    private final Animals animals;
    private final Once once;
    private final Clock clock;

    EnclosureReadingController(
            EnclosureReadingRows rows, EnclosureReadings readings, Animals animals, Once once, Clock clock) {
        this.rows = rows;
        this.readings = readings;
        this.animals = animals;
        this.once = once;
        this.clock = clock;
    }

    @PostMapping
    @Operation(
            summary = "Keep what was measured and seen of an animal's enclosure",
            description = "Needs the role keeper. Any part of it; what is left out is not known. Unlikely numbers, such"
                    + " as Fahrenheit said to be Celsius, are asked about (422) unless confirmed, and never converted."
                    + " With supersedes it corrects an earlier reading, which stays readable.")
    @ApiResponse(
            responseCode = "201",
            description = "Kept",
            content = @Content(schema = @Schema(implementation = ReadingView.class)))
    public ResponseEntity<byte[]> keep(
            Caller caller,
            @PathVariable UUID animalId,
            @RequestBody(content = @Content(schema = @Schema(implementation = ReadingBody.class)))
                    JsonRequest request) {
        caller.require(Role.KEEPER);
        requireAnimal(caller, animalId);
        Present present = Present.at(clock, caller.zone());
        NewReading reading = request.read(fields -> NewReading.read(fields, readings.rules(), present));
        return once.perform(caller, request, () -> {
            EnclosureReadingRow row = readings.keep(caller, animalId, reading);
            return Reply.created(
                    "/api/v1/animals/" + animalId + "/enclosure-readings/" + row.id(), null, view(row, null));
        });
    }

    @GetMapping
    @Operation(summary = "The readings of an animal's enclosure, in the order they were recorded")
    @Transactional(readOnly = true)
    public ResponseEntity<Items<ReadingView>> list(Caller caller, @PathVariable UUID animalId, Query query) {
        Page page = query.page();
        requireAnimal(caller, animalId);
        List<EnclosureReadingRow> fetched = rows.list(caller.organisationId(), animalId, page.after(), page.fetch());
        Map<UUID, UUID> successors = fetched.isEmpty()
                ? Map.of()
                : rows
                        .listSuccessors(
                                caller.organisationId(),
                                fetched.stream().map(EnclosureReadingRow::id).toList())
                        .stream()
                        .collect(Collectors.toMap(
                                successor -> Objects.requireNonNull(successor.supersedes()), EnclosureReadingRow::id));
        return page.reply(fetched, EnclosureReadingRow::id, row -> view(row, successors.get(row.id())));
    }

    @GetMapping("/{id}")
    @Operation(summary = "One reading, as it was given")
    @Transactional(readOnly = true)
    public ResponseEntity<ReadingView> reading(
            Caller caller, @PathVariable UUID animalId, @PathVariable UUID id, Query query) {
        query.orThrow();
        EnclosureReadingRow row = rows.find(caller.organisationId(), animalId, id)
                .orElseThrow(() -> ProblemException.notFound("enclosure reading"));
        return ResponseEntity.ok(view(
                row,
                rows.findSuccessor(caller.organisationId(), id)
                        .map(EnclosureReadingRow::id)
                        .orElse(null)));
    }

    private void requireAnimal(Caller caller, UUID animalId) {
        if (animals.find(caller.organisationId(), animalId).isEmpty()) {
            throw ProblemException.notFound("animal");
        }
    }

    private ReadingView view(EnclosureReadingRow row, @Nullable UUID supersededBy) {
        GivenReading given = readings.given(row);
        return new ReadingView(
                row.id(),
                row.animalId(),
                row.recordedBy(),
                row.occurredAt(),
                row.recordedAt(),
                row.localDate(),
                row.supersedes(),
                supersededBy,
                new TreeMap<>(given.temperatures()),
                given.humidity(),
                given.uvIndexAtBack(),
                new TreeMap<>(given.facts()),
                new TreeMap<>(given.sizes()),
                given.note());
    }

    /** Only described here: {@link NewReading} reads it. */
    @Schema(name = "NewEnclosureReading", description = "Everything is optional; at least one thing is given")
    record ReadingBody(
            @Schema(
                    description = "basking-surface, warm-air, cool-air, night-minimum, coldest-surface, water, skin",
                    example = "{\"basking-surface\": {\"value\": 120, \"unit\": \"[degF]\"}}")
            @Nullable
            Map<String, TemperatureBody> temperatures,

            @Nullable HumidityBody humidity,

            @Schema(description = "the UV index at the height of the animal's back", minimum = "0", maximum = "50")
            @Nullable
            BigDecimal uvIndexAtBack,

            @Schema(
                    description = "how the enclosure is set up, by the ids and values that surroundings names",
                    example = "{\"lamp\": \"flood\", \"lamp-guarded\": \"yes\"}")
            @Nullable
            Map<String, String> facts,

            @Schema(
                    description = "footprint-length, footprint-width, height, lamp-distance, deepest-water",
                    example = "{\"lamp-distance\": {\"value\": 30, \"unit\": \"cm\"}}")
            @Nullable
            Map<String, LengthBody> sizes,

            @Schema(maxLength = 4000) @Nullable String note,

            @Schema(description = "now where none is named; not in the future") @Nullable
            Instant occurredAt,

            @Schema(description = "the reading that this one corrects") @Nullable
            UUID supersedes) {

        @Schema(name = "NewTemperature")
        record TemperatureBody(
                BigDecimal value,
                @Schema(allowableValues = {"Cel", "[degF]"}) String unit,

                @Schema(description = "stands by an unlikely value") @Nullable
                Boolean confirmed) {}

        @Schema(name = "NewHumidity")
        record HumidityBody(
                @Schema(description = "more than 0, up to 100")
                BigDecimal percent,

                @Schema(description = "the temperature at the same spot; without it a humidity means nothing")
                TemperatureBody at) {}

        @Schema(name = "NewSize")
        record LengthBody(
                BigDecimal value,

                @Schema(allowableValues = {"mm", "cm", "[in_i]"})
                String unit,

                @Schema(description = "stands by an unlikely value") @Nullable
                Boolean confirmed) {}
    }

    @Schema(name = "EnclosureReading")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record ReadingView(
            UUID id,
            UUID animalId,
            UUID recordedBy,
            Instant occurredAt,
            Instant recordedAt,

            @Schema(description = "of occurredAt, in the organisation's zone")
            LocalDate localDate,

            @Nullable UUID supersedes,
            @Nullable UUID supersededBy,
            Map<String, GivenReading.GivenTemperature> temperatures,
            GivenReading.@Nullable GivenHumidity humidity,
            @Nullable BigDecimal uvIndexAtBack,
            Map<String, String> facts,
            Map<String, GivenReading.GivenLength> sizes,
            @Nullable String note) {}
}
