package varanid.intake.account;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.parameters.RequestBody;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.time.Instant;
import java.time.ZoneId;
import java.util.UUID;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.springframework.http.ResponseEntity;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.Contacts;
import varanid.intake.platform.web.Given;
import varanid.intake.platform.web.IfMatch;
import varanid.intake.platform.web.JsonFields;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.Query;
import varanid.intake.platform.web.Version;

@RestController
@RequestMapping("/api/v1/organisation")
@Tag(name = "Organisation", description = "Whose everything is: the caller's own, and no other")
class OrganisationController {

    private final OwnOrganisation own;

    OrganisationController(OwnOrganisation own) {
        this.own = own;
    }

    @GetMapping
    @Operation(summary = "The caller's organisation")
    @Transactional(readOnly = true)
    public ResponseEntity<OrganisationView> organisation(Caller caller, Query query) {
        query.orThrow();
        return reply(own.get(caller));
    }

    @PutMapping
    @Operation(summary = "Change its name, zone or telephone", description = "Needs the role administrator.")
    @Transactional
    public ResponseEntity<OrganisationView> change(
            Caller caller,
            IfMatch ifMatch,
            @RequestBody(content = @Content(schema = @Schema(implementation = OrganisationRequest.class)))
                    JsonRequest request) {
        return reply(own.changed(caller, ifMatch, request));
    }

    private static ResponseEntity<OrganisationView> reply(OrganisationRow row) {
        return ResponseEntity.ok()
                .eTag(Version.tag(row.version()))
                .body(new OrganisationView(
                        row.organisationId(), row.name(), row.zone(), row.phone(), row.recordedAt()));
    }

    @Schema(name = "OrganisationRequest")
    record OrganisationRequest(
            @Schema(maxLength = 200, requiredMode = Schema.RequiredMode.REQUIRED)
            String name,

            @Schema(
                    description = "IANA zone: dates are meant there",
                    example = "Europe/Berlin",
                    requiredMode = Schema.RequiredMode.REQUIRED)
            String zone,

            @Schema(
                    description = "whom to call, as it is dialled: it stands on cage cards and on what a vet reads",
                    maxLength = 60)
            @Nullable
            String phone) {

        static Supplier<OrganisationRequest> reader(JsonFields fields) {
            Given<String> name = fields.text("name", 200).required();
            String right = "an IANA zone such as Europe/Berlin";
            Given<String> zone = fields.text("zone", 60)
                    .check(ZoneId.getAvailableZoneIds()::contains, "is not a zone", right)
                    .required();
            Given<String> phone = Contacts.phone(fields, "phone");
            return () -> new OrganisationRequest(name.get(), zone.get(), phone.orNull());
        }
    }

    @Schema(name = "Organisation")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record OrganisationView(
            UUID id,
            String name,
            String zone,

            @Schema(description = "whom to call, as it is dialled") @Nullable
            String phone,

            Instant recordedAt) {}
}
