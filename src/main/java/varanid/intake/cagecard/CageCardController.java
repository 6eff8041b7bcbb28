package varanid.intake.cagecard;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestController;
import tools.jackson.databind.json.JsonMapper;
import varanid.intake.platform.time.Present;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.Documents;
import varanid.intake.platform.web.Items;
import varanid.intake.platform.web.Page;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.ProblemType;
import varanid.intake.platform.web.PublicAddress;
import varanid.intake.platform.web.Query;
import varanid.intake.quarantine.FollowUps;

/** Cards to print: of one animal, and of all of a room. */
@RestController
@Tag(name = "Cage cards", description = "What hangs at a cage, for whoever opens it")
class CageCardController {

    private static final MediaType HTML = new MediaType("text", "html", StandardCharsets.UTF_8);

    /** In order of preference. */
    private static final List<MediaType> FORMS = List.of(MediaType.APPLICATION_JSON, HTML, MediaType.APPLICATION_PDF);

    private final CageCards cards;
    private final CardPage page;
    private final FollowUps followUps;
    private final PublicAddress address;
    private final JsonMapper json;
    private final Clock clock;

    CageCardController(
            CageCards cards, CardPage page, FollowUps followUps, PublicAddress address, JsonMapper json, Clock clock) {
        this.cards = cards;
        this.page = page;
        this.followUps = followUps;
        this.address = address;
        this.json = json;
        this.clock = clock;
    }

    @GetMapping("/api/v1/animals/{animalId}/cage-card")
    @Operation(
            summary = "The card of one cage: who it is, how strictly apart, and what to do before opening",
            description = "The same content as JSON, as a page that prints, or as a PDF in A6, by the Accept header.")
    @ApiResponse(
            responseCode = "200",
            description = "the card as of now",
            content = {
                @Content(
                        mediaType = MediaType.APPLICATION_JSON_VALUE,
                        schema = @Schema(implementation = CageCard.class)),
                @Content(mediaType = MediaType.TEXT_HTML_VALUE),
                @Content(mediaType = MediaType.APPLICATION_PDF_VALUE)
            })
    @Transactional(readOnly = true)
    public ResponseEntity<byte[]> card(
            Caller caller, @PathVariable UUID animalId, Query query, HttpServletRequest request) {
        query.orThrow();
        MediaType form = choose(request);
        Present present = present(caller);
        CageCard card = find(caller, present, animalId, request).orElseThrow(() -> ProblemException.notFound("animal"));
        byte[] body = switch (form.getSubtype()) {
            case "html" -> bytes(page.html(card));
            case "pdf" -> page.pdf(card);
            default -> json.writeValueAsBytes(card);
        };
        return Documents.reply(form, fileName("cage-card-", card.title(), present, form))
                .body(body);
    }

    @GetMapping("/api/v1/rooms/{roomId}/cage-cards")
    @Operation(
            summary = "The cards of all animals that stand in a room today, a page of the list in one document",
            description = "As JSON, as a page that prints, or as a PDF with four cards on each A4 sheet, by the Accept"
                    + " header. The Link header leads to the next page.")
    @ApiResponse(
            responseCode = "200",
            description = "the cards as of now",
            content = {
                @Content(mediaType = MediaType.APPLICATION_JSON_VALUE, schema = @Schema(implementation = Cards.class)),
                @Content(mediaType = MediaType.TEXT_HTML_VALUE),
                @Content(mediaType = MediaType.APPLICATION_PDF_VALUE)
            })
    @Transactional(readOnly = true)
    public ResponseEntity<byte[]> cardsOfRoom(
            Caller caller, @PathVariable UUID roomId, Query query, HttpServletRequest request) {
        Page asked = query.page();
        MediaType form = choose(request);
        Present present = present(caller);
        FollowUps.Occupants there = followUps
                .findOccupants(caller.organisationId(), roomId, present.today())
                .orElseThrow(() -> ProblemException.notFound("room"));
        String after = asked.after().toString();
        List<UUID> animals = there.animals().stream()
                .filter(animal -> animal.toString().compareTo(after) > 0)
                .limit(asked.fetch().max())
                .toList();
        ResponseEntity<Items<CageCard>> listed = asked.reply(
                animals,
                animal -> animal,
                animal -> find(caller, present, animal, request).orElseThrow());
        List<CageCard> found = Objects.requireNonNull(listed.getBody()).items();
        String room = there.room().name();
        byte[] body = switch (form.getSubtype()) {
            case "html" -> bytes(page.html(room, found));
            case "pdf" -> page.pdf(room, found);
            default -> json.writeValueAsBytes(new Cards(found));
        };
        return Documents.reply(form, fileName("cage-cards-", room, present, form))
                .header(
                        HttpHeaders.LINK,
                        listed.getHeaders().getOrEmpty(HttpHeaders.LINK).toArray(String[]::new))
                .body(body);
    }

    private Present present(Caller caller) {
        Instant now = clock.instant().truncatedTo(ChronoUnit.MILLIS);
        return new Present(now, caller.zone());
    }

    private Optional<CageCard> find(Caller caller, Present present, UUID animal, HttpServletRequest request) {
        return cards.find(caller.organisationId(), present, animal, address.resolve(request, "/animals/" + animal));
    }

    private static MediaType choose(HttpServletRequest request) {
        return Documents.choose(request, FORMS)
                .orElseThrow(() -> new ProblemException(
                        ProblemType.NOT_ACCEPTABLE,
                        "Cage cards are there as application/json, text/html, application/pdf.",
                        List.of()));
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static String fileName(String kind, String name, Present present, MediaType form) {
        return kind + Documents.inFileName(name) + present.today() + "." + form.getSubtype();
    }

    /** The cards of a room, or a page of them. */
    @Schema(name = "CageCards")
    record Cards(List<CageCard> items) {}
}
