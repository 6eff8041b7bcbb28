package varanid.intake.page.animal;

import jakarta.servlet.http.HttpServletRequest;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;
import varanid.intake.page.Faults;
import varanid.intake.page.SeeOther;
import varanid.intake.page.SentForms;
import varanid.intake.platform.time.ReaderDates;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.QrCode;
import varanid.intake.platform.web.Role;
import varanid.intake.platform.web.SentForm;
import varanid.intake.share.GiveLinks;
import varanid.intake.share.LinkKind;
import varanid.intake.visit.PageView;
import varanid.intake.visit.Shown;

/** Hands an animal over to a vet: the page to take along, and links for who has no account. */
@Controller
class HandOverPage {

    private static final int MOST = 20;
    private static final int QR_PIXELS = 200;

    private final Shown shown;
    private final GiveLinks links;
    private final JsonMapper json;

    HandOverPage(Shown shown, GiveLinks links, JsonMapper json) {
        this.shown = shown;
        this.links = links;
        this.json = json;
    }

    /**
     * @param before the last link of the page before
     * @param revoked whether one was just revoked
     */
    @GetMapping("/animals/{animalId}/hand-over")
    ModelAndView handOver(
            Caller caller,
            @PathVariable UUID animalId,
            @RequestParam(required = false) @Nullable UUID before,
            @RequestParam(required = false) @Nullable String revoked,
            Locale locale) {
        ModelAndView page =
                page(HttpStatus.OK, caller, animalId, SentForm.empty(), Map.of(), Optional.ofNullable(before), locale);
        page.addObject("revoked", revoked != null);
        return page;
    }

    /** Shown at once and not behind a redirect: the address is nowhere to be read again. */
    @PostMapping("/animals/{animalId}/hand-over")
    ModelAndView giveLink(Caller caller, @PathVariable UUID animalId, HttpServletRequest sent, Locale locale) {
        SentForm form = SentForm.of(sent);
        ObjectNode link = JsonNodeFactory.instance.objectNode();
        form.putText(link, "kind");
        form.putText(link, "recipient");
        form.putNumber(link, "validDays", "validDays");
        // Who goes back and makes another one wants another one.
        JsonRequest request = JsonRequest.ofForm(
                "POST /animals/" + animalId + "/hand-over",
                link,
                form.key(SentForms.KEY).map(key -> key + " " + link).orElse(null));
        try {
            JsonNode body = json.readTree(Objects.requireNonNull(
                    links.give(caller, animalId, request, sent).getBody()));
            ModelAndView page =
                    page(HttpStatus.OK, caller, animalId, SentForm.empty(), Map.of(), Optional.empty(), locale);
            page.addObject("made", made(body, caller.zone(), locale));
            return page;
        } catch (ProblemException e) {
            return page(
                    HttpStatus.UNPROCESSABLE_CONTENT,
                    caller,
                    animalId,
                    form,
                    Faults.byField(e, Map.of()),
                    Optional.empty(),
                    locale);
        }
    }

    @PostMapping("/animals/{animalId}/hand-over/{linkId}/revocation")
    ModelAndView revoke(Caller caller, @PathVariable UUID animalId, @PathVariable UUID linkId) {
        links.revoke(caller, animalId, linkId);
        return SeeOther.path("/animals/" + animalId + "/hand-over?revoked#links");
    }

    private ModelAndView page(
            HttpStatus status,
            Caller caller,
            UUID animalId,
            SentForm form,
            Map<String, List<String>> faults,
            Optional<UUID> before,
            Locale locale) {
        PageView view = shown.find(caller.organisationId(), caller.zone(), animalId, ReaderDates.of(locale))
                .orElseThrow(() -> ProblemException.notFound("animal"));
        List<GiveLinks.Known> found = links.listLatest(caller, animalId, before, MOST + 1);
        ModelAndView page = new ModelAndView("hand-over", status);
        page.addObject("sheets", List.of("animal"));
        page.addObject("animal", animalId);
        page.addObject("it", view);
        page.addObject("typed", form);
        page.addObject("faults", faults);
        page.addObject("key", SentForms.nextKey(form, false));
        page.addObject("mayGive", caller.isKeeperOrClinician());
        page.addObject("confirms", caller.may(Role.CLINICIAN));
        page.addObject("revoked", false);
        page.addObject("made", null);
        page.addObject(
                "links",
                found.stream()
                        .limit(MOST)
                        .map(link -> Link.of(link, caller.zone(), locale))
                        .toList());
        page.addObject("next", found.size() > MOST ? found.get(MOST - 1).id() : null);
        return page;
    }

    private static Made made(JsonNode body, ZoneId zone, Locale locale) {
        String address = body.path("address").stringValue("");
        String recipient = body.path("recipient").stringValue("");
        return new Made(
                address,
                recipient,
                body.path("kind").stringValue("").equals(LinkKind.REPLY.code()),
                moment(Instant.parse(body.path("expiresAt").stringValue()), zone, locale),
                QrCode.svg(address, recipient, QR_PIXELS));
    }

    /**
     * A link that was just made.
     *
     * @param reply whether it opens a form for an answer
     * @param qr its address as a drawing
     */
    public record Made(String address, String recipient, boolean reply, String until, String qr) {}

    /**
     * A link that was given out.
     *
     * @param state open, expired, revoked or issuer-left
     * @param last when it was opened last; null where it never was
     */
    public record Link(
            UUID id,
            String kind,
            String recipient,
            String hint,
            String state,
            String made,
            String until,
            int openings,
            @Nullable String last) {

        private static Link of(GiveLinks.Known link, ZoneId zone, Locale locale) {
            return new Link(
                    link.id(),
                    link.kind().code(),
                    link.recipient(),
                    link.hint(),
                    link.state(),
                    moment(link.recordedAt(), zone, locale),
                    moment(link.expiresAt(), zone, locale),
                    link.openings(),
                    link.lastOpenedAt().map(at -> moment(at, zone, locale)).orElse(null));
        }
    }

    private static String moment(Instant at, ZoneId zone, Locale locale) {
        return ReaderDates.of(locale).moment(at, zone);
    }
}
