package varanid.intake.sample;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.parameters.RequestBody;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import org.springframework.http.ResponseEntity;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import varanid.intake.platform.database.OrganisationLock;
import varanid.intake.platform.id.Ids;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.IfMatch;
import varanid.intake.platform.web.Items;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.Page;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.Query;
import varanid.intake.platform.web.Role;
import varanid.intake.platform.web.Version;

@RestController
@RequestMapping("/api/v1/settings/sampling")
@Tag(name = "Settings of sampling", description = "What is assumed of infections and tests, with its sources")
class SamplingSettingsController {

    private final SamplingSettingRows rows;
    private final SamplingSettings settings;
    private final SamplingReference reference;
    private final OrganisationLock lock;
    private final Ids ids;
    private final Clock clock;

    SamplingSettingsController(
            SamplingSettingRows rows,
            SamplingSettings settings,
            SamplingReference reference,
            OrganisationLock lock,
            Ids ids,
            Clock clock) {
        this.rows = rows;
        this.settings = settings;
        this.reference = reference;
        this.lock = lock;
        this.ids = ids;
        this.clock = clock;
    }

    @GetMapping
    @Operation(summary = "What is in force, and where each figure comes from")
    @Transactional(readOnly = true)
    public ResponseEntity<SettingsView> settings(Caller caller, Query query) {
        query.orThrow();
        return reply(rows.findLatest(caller.organisationId()));
    }

    @PutMapping
    @Operation(
            summary = "Set the organisation's own figures",
            description = "Needs the role clinician or administrator. Replaces all that was set before: what is left"
                    + " out is as shipped again.")
    @Transactional
    public ResponseEntity<SettingsView> change(
            Caller caller,
            IfMatch ifMatch,
            @RequestBody(content = @Content(schema = @Schema(implementation = NewSetting.Body.class)))
                    JsonRequest request) {
        if (!caller.may(Role.CLINICIAN) && !caller.may(Role.ADMINISTRATOR)) {
            throw ProblemException.forbidden("This needs the role clinician or administrator.");
        }
        NewSetting setting = request.read(fields -> NewSetting.reader(fields, reference.defaults()));
        // Or two changes at once would both be the next version.
        lock.hold(caller.organisationId());
        long version = version(rows.findLatest(caller.organisationId()));
        ifMatch.require(version);
        SamplingSettingRow row = rows.saveAndFlush(new SamplingSettingRow(
                caller.key(ids.next()),
                version + 1,
                settings.write(setting.figures()),
                setting.reason(),
                caller.personId(),
                clock.instant()));
        return reply(Optional.of(row));
    }

    @GetMapping("/history")
    @Operation(summary = "Every change of the organisation's own figures, in order")
    @Transactional(readOnly = true)
    public ResponseEntity<Items<SettingsView.ChangeView>> history(Caller caller, Query query) {
        Page page = query.page();
        List<SamplingSettingRow> found = rows.list(caller.organisationId(), page.after(), page.fetch());
        return page.reply(found, SamplingSettingRow::id, row -> SettingsView.ChangeView.of(row, settings.figures(row)));
    }

    private ResponseEntity<SettingsView> reply(Optional<SamplingSettingRow> latest) {
        return ResponseEntity.ok()
                .eTag(Version.tag(version(latest)))
                .body(SettingsView.of(
                        settings.of(latest),
                        latest.map(row -> SettingsView.ChangeView.of(row, settings.figures(row)))
                                .orElse(null)));
    }

    /** Before the first change it is 0. */
    private static long version(Optional<SamplingSettingRow> latest) {
        return latest.map(SamplingSettingRow::version).orElse(0L);
    }
}
