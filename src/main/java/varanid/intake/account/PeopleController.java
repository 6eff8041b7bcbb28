package varanid.intake.account;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.parameters.RequestBody;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.time.Instant;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.springframework.http.ResponseEntity;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.Fault;
import varanid.intake.platform.web.Given;
import varanid.intake.platform.web.IfMatch;
import varanid.intake.platform.web.Items;
import varanid.intake.platform.web.JsonFields;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.Once;
import varanid.intake.platform.web.Page;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.ProblemType;
import varanid.intake.platform.web.Query;
import varanid.intake.platform.web.Reply;
import varanid.intake.platform.web.Role;
import varanid.intake.platform.web.Version;

@RestController
@RequestMapping("/api/v1/people")
@Tag(name = "People", description = "The people of the organisation and what they may do")
class PeopleController {

    private final People people;
    private final Organisations organisations;
    private final Accounts accounts;
    private final Once once;

    PeopleController(People people, Organisations organisations, Accounts accounts, Once once) {
        this.people = people;
        this.organisations = organisations;
        this.accounts = accounts;
        this.once = once;
    }

    @PostMapping
    @Operation(summary = "Add a person", description = "Needs the role administrator.")
    @ApiResponse(
            responseCode = "201",
            description = "Added",
            content = @Content(schema = @Schema(implementation = PersonView.class)))
    public ResponseEntity<byte[]> add(
            Caller caller,
            @RequestBody(content = @Content(schema = @Schema(implementation = NewPerson.class))) JsonRequest request) {
        caller.require(Role.ADMINISTRATOR);
        NewPerson person = request.read(NewPerson::reader);
        return once.perform(caller, request, () -> {
            PersonRow row = accounts.addPersonRow(caller.organisationId(), person.name(), roles(person.roles()));
            return Reply.created("/api/v1/people/" + row.id(), row.version(), PersonView.of(row));
        });
    }

    @GetMapping
    @Operation(summary = "The people of the organisation")
    @Transactional(readOnly = true)
    public ResponseEntity<Items<PersonView>> list(Caller caller, Query query) {
        Page page = query.page();
        List<PersonRow> rows = people.list(caller.organisationId(), page.after(), page.fetch());
        return page.reply(rows, PersonRow::id, PersonView::of);
    }

    @GetMapping("/{id}")
    @Operation(summary = "One person")
    @Transactional(readOnly = true)
    public ResponseEntity<PersonView> person(Caller caller, @PathVariable UUID id, Query query) {
        query.orThrow();
        return reply(get(caller, id));
    }

    @PutMapping("/{id}")
    @Operation(
            summary = "Change a person",
            description = "Needs the role administrator. Nobody changes their own roles, or makes themselves inactive.")
    @Transactional
    public ResponseEntity<PersonView> change(
            Caller caller,
            @PathVariable UUID id,
            IfMatch ifMatch,
            @RequestBody(content = @Content(schema = @Schema(implementation = ChangedPerson.class)))
                    JsonRequest request) {
        caller.require(Role.ADMINISTRATOR);
        PersonRow row = get(caller, id);
        boolean own = id.equals(caller.personId());
        ChangedPerson change = request.read(fields -> ChangedPerson.reader(fields, own ? row.roles() : null));
        ifMatch.require(row.version());
        // Alone from here, or two administrators could remove each other.
        organisations.lock(caller.organisationId());
        row.change(change.name(), roles(change.roles()), change.active());
        PersonRow changed = people.saveAndFlush(row);
        if (people.listActiveAdministrators(caller.organisationId()).isEmpty()) {
            throw new ProblemException(
                    ProblemType.INVALID_REQUEST,
                    "The organisation would be left without an administrator.",
                    List.of(Fault.at("#/roles", "takes the last administrator away", "another one first")));
        }
        return reply(changed);
    }

    private PersonRow get(Caller caller, UUID id) {
        return people.findById(caller.key(id)).orElseThrow(() -> ProblemException.notFound("person"));
    }

    private static ResponseEntity<PersonView> reply(PersonRow row) {
        return ResponseEntity.ok().eTag(Version.tag(row.version())).body(PersonView.of(row));
    }

    private static Set<Role> roles(List<Role> listed) {
        return listed.isEmpty() ? EnumSet.noneOf(Role.class) : EnumSet.copyOf(listed);
    }

    @Schema(name = "NewPerson")
    record NewPerson(
            @Schema(maxLength = 200, requiredMode = Schema.RequiredMode.REQUIRED)
            String name,

            @Schema(requiredMode = Schema.RequiredMode.REQUIRED)
            List<Role> roles) {

        static Supplier<NewPerson> reader(JsonFields fields) {
            Given<String> name = fields.text("name", 200).required();
            Given<List<Role>> roles = readRoles(fields);
            return () -> new NewPerson(name.get(), roles.get());
        }

        static Given<List<Role>> readRoles(JsonFields fields) {
            return fields.list("roles", 3, value -> value.choice(List.of(Role.values()), Role::code))
                    .check(roles -> !roles.isEmpty(), "is empty", "at least one role")
                    .required();
        }
    }

    @Schema(name = "ChangedPerson")
    record ChangedPerson(
            @Schema(maxLength = 200, requiredMode = Schema.RequiredMode.REQUIRED)
            String name,

            @Schema(requiredMode = Schema.RequiredMode.REQUIRED)
            List<Role> roles,

            @Schema(
                    description = "an inactive person's tokens are refused",
                    requiredMode = Schema.RequiredMode.REQUIRED)
            boolean active) {

        static Supplier<ChangedPerson> reader(JsonFields fields, @Nullable Set<Role> ownRoles) {
            Given<String> name = fields.text("name", 200).required();
            Given<List<Role>> roles = NewPerson.readRoles(fields);
            Given<Boolean> active = fields.flag("active").required();
            if (ownRoles != null) {
                roles.check(
                        given -> ownRoles.equals(PeopleController.roles(given)),
                        "changes your own roles",
                        "your roles as they are; another administrator can change them");
                active.check(given -> given, "makes yourself inactive", "true");
            }
            return () -> new ChangedPerson(name.get(), roles.get(), active.get());
        }
    }

    @Schema(name = "Person")
    record PersonView(UUID id, String name, Set<Role> roles, boolean active, Instant recordedAt) {

        static PersonView of(PersonRow row) {
            return new PersonView(row.id(), row.name(), row.roles(), row.active(), row.recordedAt());
        }
    }
}
