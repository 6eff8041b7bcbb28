package varanid.intake.quarantine;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.parameters.RequestBody;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.time.Clock;
import java.time.Instant;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.springframework.http.ResponseEntity;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import varanid.intake.platform.database.OrganisationLock;
import varanid.intake.platform.id.Ids;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.Given;
import varanid.intake.platform.web.IfMatch;
import varanid.intake.platform.web.Items;
import varanid.intake.platform.web.JsonFields;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.JsonValue;
import varanid.intake.platform.web.Page;
import varanid.intake.platform.web.Query;
import varanid.intake.platform.web.Role;
import varanid.intake.platform.web.Version;

@RestController
@RequestMapping("/api/v1/settings/quarantine")
@Tag(name = "Quarantine")
class QuarantineSettingsController {

    private final QuarantineSettings settings;
    private final HouseRules house;
    private final QuarantinePolicy policy;
    private final OrganisationLock lock;
    private final Ids ids;
    private final Clock clock;

    QuarantineSettingsController(
            QuarantineSettings settings,
            HouseRules house,
            QuarantinePolicy policy,
            OrganisationLock lock,
            Ids ids,
            Clock clock) {
        this.settings = settings;
        this.house = house;
        this.policy = policy;
        this.lock = lock;
        this.ids = ids;
        this.clock = clock;
    }

    @GetMapping
    @Operation(summary = "How many days newcomers are kept apart: the policy's least, and the organisation's own")
    @Transactional(readOnly = true)
    public ResponseEntity<SettingsView> settings(Caller caller, Query query) {
        query.orThrow();
        return reply(house.findCurrent(caller.organisationId()));
    }

    @PutMapping
    @Operation(
            summary = "Keep newcomers apart for longer than the policy asks",
            description = "Needs the role administrator or clinician. Holds for animals placed from now on. Below the"
                    + " policy goes only what a vet decides for the animals of one room, recorded there.")
    @Transactional
    public ResponseEntity<SettingsView> change(
            Caller caller,
            IfMatch ifMatch,
            @RequestBody(content = @Content(schema = @Schema(implementation = SettingsRequest.class)))
                    JsonRequest request) {
        if (!caller.may(Role.CLINICIAN)) {
            caller.require(Role.ADMINISTRATOR);
        }
        SettingsRequest wanted = request.read(this::reader);
        lock.hold(caller.organisationId());
        long version = house.findCurrent(caller.organisationId())
                .map(row -> row.version)
                .orElse(0L);
        ifMatch.require(version);
        return reply(Optional.of(settings.saveAndFlush(new QuarantineSettingRow(
                caller.key(ids.next()),
                version + 1,
                house.write(wanted.days()),
                wanted.reason(),
                caller.personId(),
                clock.instant()))));
    }

    @GetMapping("/changes")
    @Operation(summary = "What the organisation's own days were, in the order they were set")
    @Transactional(readOnly = true)
    public ResponseEntity<Items<ChangeView>> changes(Caller caller, Query query) {
        Page page = query.page();
        return page.reply(
                settings.list(caller.organisationId(), page.after(), page.fetch()),
                row -> row.key.id(),
                row -> new ChangeView(row.version, house.byCode(row), row.reason, row.recordedBy, row.recordedAt));
    }

    private ResponseEntity<SettingsView> reply(Optional<QuarantineSettingRow> current) {
        Map<Origin, Integer> own = current.map(house::days).orElseGet(() -> new EnumMap<>(Origin.class));
        return ResponseEntity.ok()
                .eTag(Version.tag(current.map(row -> row.version).orElse(0L)))
                .body(new SettingsView(
                        policy.minimumDays().stream()
                                .map(row -> new OriginView(
                                        row.origin().code(),
                                        row.days(),
                                        own.get(row.origin()),
                                        Math.max(row.days(), own.getOrDefault(row.origin(), 0)),
                                        row.vetRelease(),
                                        row.reason(),
                                        row.source()))
                                .toList(),
                        MinimumView.of(policy.strictMinimum()),
                        MinimumView.of(policy.contagionMinimum()),
                        policy.published(),
                        policy.warning(),
                        current.map(row -> row.reason).orElse(null),
                        current.map(row -> row.recordedBy).orElse(null),
                        current.map(row -> row.recordedAt).orElse(null)));
    }

    private Supplier<SettingsRequest> reader(JsonFields fields) {
        Given<Map<String, Integer>> days =
                fields.entries("days", Origin.values().length, this::days).required();
        Given<String> reason = fields.prose("reason", 2_000);
        return () -> {
            Map<Origin, Integer> byOrigin = new EnumMap<>(Origin.class);
            days.get()
                    .forEach(
                            (origin, number) -> byOrigin.put(Origin.find(origin).orElseThrow(), number));
            return new SettingsRequest(byOrigin, reason.orNull());
        };
    }

    private Given<Integer> days(String code, JsonValue value) {
        Optional<Origin> origin = Origin.find(code);
        if (origin.isEmpty()) {
            return value.faulty(
                    "is no origin",
                    "one of: "
                            + String.join(
                                    ", ",
                                    Arrays.stream(Origin.values())
                                            .map(Origin::code)
                                            .toList()));
        }
        int floor =
                policy.minimumStay(origin.get(), Isolation.STANDARD, Set.of()).floorDays();
        return value.integer(0, MinimumStay.MOST_DAYS)
                .check(
                        days -> days >= floor,
                        "is below the policy's least, " + floor,
                        floor + " or more. Fewer days are no setting: a vet decides them for the animals of one room,"
                                + " as an event vet-decided of that room");
    }

    @Schema(name = "QuarantineSettingsRequest")
    record SettingsRequest(
            @Schema(
                    description = "by origin; those left out follow the policy",
                    example = "{\"wild\": 120}",
                    requiredMode = Schema.RequiredMode.REQUIRED)
            Map<Origin, Integer> days,

            @Schema(maxLength = 2000) @Nullable String reason) {}

    @Schema(name = "QuarantineSettings")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record SettingsView(
            List<OriginView> origins,

            @Schema(description = "for animals whose isolation is strict, whatever their origin")
            MinimumView strict,

            @Schema(description = "where something contagious was found or is suspected")
            MinimumView contagion,

            @Schema(description = "what others ask for; they disagree")
            List<QuarantinePolicy.Published> published,

            String warning,
            @Nullable String reason,
            @Nullable UUID recordedBy,
            @Nullable Instant recordedAt) {}

    @Schema(name = "OriginDays")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record OriginView(
            String origin,

            @Schema(description = "the policy's least") int policyDays,

            @Schema(description = "the organisation's own, where it has set any") @Nullable
            Integer ownDays,

            @Schema(description = "what holds") int days,

            @Schema(description = "whether a vet has to approve a release")
            boolean vetRelease,

            String reason,
            String source) {}

    @Schema(name = "MinimumDays")
    record MinimumView(int days, boolean vetRelease, String reason, String source) {
        static MinimumView of(QuarantinePolicy.Minimum minimum) {
            return new MinimumView(minimum.days(), minimum.vetRelease(), minimum.reason(), minimum.source());
        }
    }

    @Schema(name = "QuarantineSettingsChange")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record ChangeView(
            long version,
            Map<String, Integer> days,
            @Nullable String reason,
            UUID recordedBy,
            Instant recordedAt) {}
}
