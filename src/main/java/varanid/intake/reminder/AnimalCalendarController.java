package varanid.intake.reminder;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.enums.ParameterIn;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.http.CacheControl;
import org.springframework.http.HttpHeaders;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestController;
import varanid.intake.animal.Animals;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.Given;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.Query;

/** The reminders of one animal for whoever sends a token: the same file that a secret address opens. */
@RestController
@Tag(name = "Calendars")
class AnimalCalendarController {

    private final Feeds feeds;
    private final Animals animals;

    AnimalCalendarController(Feeds feeds, Animals animals) {
        this.feeds = feeds;
        this.animals = animals;
    }

    @GetMapping("/api/v1/animals/{animalId}/calendar")
    @Operation(
            summary = "The reminders of an animal as one iCalendar file (RFC 5545)",
            description = "To subscribe to in a calendar program, which cannot send a token, make a secret address with"
                    + " POST /calendars instead.")
    @Parameter(
            name = "form",
            in = ParameterIn.QUERY,
            description = "events unless said",
            schema =
                    @Schema(
                            type = "string",
                            allowableValues = {"events", "todos"}))
    public ResponseEntity<byte[]> calendar(Caller caller, @PathVariable UUID animalId, Query query) {
        Given<CalendarFeed.As> form = query.choice("form", List.of(CalendarFeed.As.values()), CalendarFeed.As::code);
        query.orThrow();
        Animals.Newcomer animal =
                animals.find(caller.organisationId(), animalId).orElseThrow(() -> ProblemException.notFound("animal"));
        byte[] file = feeds.write(
                caller.organisationId(),
                caller.zone(),
                Optional.of(animalId),
                animal.name().orElse(animalId.toString()),
                form.orElse(CalendarFeed.As.EVENTS));
        return ResponseEntity.ok()
                .contentType(FeedController.CALENDAR)
                .cacheControl(CacheControl.noCache().cachePrivate())
                .header(HttpHeaders.CONTENT_DISPOSITION, FeedController.FILE.toString())
                .body(file);
    }
}
