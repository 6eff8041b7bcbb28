package varanid.intake.reminder;

import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.domain.Limit;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import varanid.intake.animal.Animals;
import varanid.intake.platform.id.Ids;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.Once;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.Reply;
import varanid.intake.platform.web.Role;
import varanid.intake.platform.web.SecretText;

/** Calendars that people make for themselves, and close. A person sees their own, an administrator all. */
@Service
public class OwnCalendars {

    private static final UUID BEFORE_ALL = new UUID(0, 0);

    private final CalendarLinks links;
    private final Animals animals;
    private final Ids ids;
    private final Once once;
    private final Clock clock;

    OwnCalendars(CalendarLinks links, Animals animals, Ids ids, Once once, Clock clock) {
        this.links = links;
        this.animals = animals;
        this.ids = ids;
        this.once = once;
        this.clock = clock;
    }

    /**
     * A calendar, without its address.
     *
     * @param animalId empty: of all animals
     * @param hint enough of its address to know it again
     * @param lastFetchedOn the day, in the organisation's zone; empty: never
     * @param open whether its address still opens it
     */
    public record Known(
            UUID id,
            Optional<UUID> animalId,
            String label,
            String hint,
            Optional<LocalDate> lastFetchedOn,
            boolean open) {

        private static Known of(CalendarLinkRow row) {
            return new Known(
                    row.id(),
                    row.animalId(),
                    row.label(),
                    row.hint(),
                    Optional.ofNullable(row.lastFetchedOn()),
                    row.revokedAt() == null);
        }
    }

    /**
     * Makes one, once for the key of the request.
     *
     * @return 201 with its path on this service as the member {@code address} of its body, which is never shown again
     * @throws ProblemException 422 with every fault of the request
     */
    public ResponseEntity<byte[]> make(Caller caller, JsonRequest request) {
        CalendarController.NewCalendar wanted =
                request.read(fields -> CalendarController.NewCalendar.reader(fields, caller, animals));
        return once.perform(caller, request, () -> {
            SecretText secret = SecretText.random(Feeds.SECRET_PREFIX, caller.organisationId());
            CalendarLinkRow row = links.save(new CalendarLinkRow(
                    caller.key(ids.next()),
                    caller.personId(),
                    wanted.animalId(),
                    wanted.form(),
                    wanted.label(),
                    secret,
                    clock.instant()));
            return Reply.created(
                    "/api/v1/calendars/" + row.id(), null, CalendarController.MadeCalendar.of(row, secret));
        });
    }

    /** Those of the person, also for an administrator, in the order they were made. */
    @Transactional(readOnly = true)
    public List<Known> listOwn(Caller caller, Optional<UUID> after, int most) {
        return links
                .listOfPerson(caller.organisationId(), caller.personId(), after.orElse(BEFORE_ALL), Limit.of(most))
                .stream()
                .map(Known::of)
                .toList();
    }

    @Transactional(readOnly = true)
    List<CalendarLinkRow> list(Caller caller, UUID after, Limit limit) {
        return caller.may(Role.ADMINISTRATOR)
                ? links.list(caller.organisationId(), after, limit)
                : links.listOfPerson(caller.organisationId(), caller.personId(), after, limit);
    }

    /**
     * Closes one, at once and for good.
     *
     * @throws ProblemException 404 where the caller sees no such calendar
     */
    public ResponseEntity<byte[]> revoke(Caller caller, UUID id, JsonRequest request) {
        return once.perform(caller, request, () -> {
            CalendarLinkRow row = get(caller, id);
            row.revoke(clock.instant());
            return Reply.ok(CalendarController.CalendarView.of(links.save(row)));
        });
    }

    /** @throws ProblemException 404 where the caller sees no such calendar */
    CalendarLinkRow get(Caller caller, UUID id) {
        return links.findById(caller.key(id))
                .filter(row -> caller.may(Role.ADMINISTRATOR) || row.personId().equals(caller.personId()))
                .orElseThrow(() -> ProblemException.notFound("calendar"));
    }
}
