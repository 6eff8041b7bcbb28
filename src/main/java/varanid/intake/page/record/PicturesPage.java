package varanid.intake.page.record;

import jakarta.servlet.http.HttpServletRequest;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;
import varanid.intake.animal.Animals;
import varanid.intake.attachment.AttachmentKeeper;
import varanid.intake.attachment.Attachments;
import varanid.intake.attachment.KeptAttachment;
import varanid.intake.page.Faults;
import varanid.intake.page.SeeOther;
import varanid.intake.page.SentForms;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.FileUpload;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.SentForm;

/** Photographs of an animal and reports of laboratories. */
@Controller
class PicturesPage {

    private final Attachments attachments;
    private final AttachmentKeeper keeper;
    private final Animals animals;

    PicturesPage(Attachments attachments, AttachmentKeeper keeper, Animals animals) {
        this.attachments = attachments;
        this.keeper = keeper;
        this.animals = animals;
    }

    /**
     * A file, as it is shown.
     *
     * @param width of the small picture, so that the page keeps its place; 0 of a report
     */
    public record Shown(UUID id, boolean picture, String caption, int width, int height, KeptAttachment kept) {

        static Shown of(KeptAttachment kept) {
            int width = kept.content().width().orElse(0);
            int height = kept.content().height().orElse(0);
            double scale = kept.content().thumbnailScale();
            return new Shown(
                    kept.id(),
                    kept.content().isPicture(),
                    kept.caption().orElse(""),
                    (int) Math.round(width * scale),
                    (int) Math.round(height * scale),
                    kept);
        }
    }

    @GetMapping("/animals/{animalId}/pictures")
    ModelAndView show(Caller caller, @PathVariable UUID animalId, @RequestParam Map<String, String> query) {
        ModelAndView page = page(HttpStatus.OK, caller, animalId, Map.of());
        page.addObject("kept", query.containsKey("kept"));
        return page;
    }

    @PostMapping("/animals/{animalId}/pictures")
    ModelAndView add(Caller caller, @PathVariable UUID animalId, FileUpload upload) {
        try {
            keeper.add(caller, animalId, upload, sent -> sent.ofForm(SentForms.KEY));
        } catch (ProblemException e) {
            return refused(caller, animalId, e);
        }
        return SeeOther.path("/animals/" + animalId + "/pictures?kept");
    }

    @PostMapping("/animals/{animalId}/pictures/{id}/withdrawal")
    ModelAndView withdraw(Caller caller, @PathVariable UUID animalId, @PathVariable UUID id, HttpServletRequest sent) {
        SentForm form = SentForm.of(sent);
        ObjectNode reason = JsonNodeFactory.instance.objectNode();
        form.putText(reason, "reason");
        try {
            keeper.withdraw(
                    caller,
                    animalId,
                    id,
                    JsonRequest.ofForm("POST /animals/" + animalId + "/pictures/" + id + "/withdrawal", reason, null));
        } catch (ProblemException e) {
            return refused(caller, animalId, e);
        }
        return SeeOther.path("/animals/" + animalId + "/pictures");
    }

    private ModelAndView refused(Caller caller, UUID animalId, ProblemException e) {
        return page(HttpStatus.UNPROCESSABLE_CONTENT, caller, animalId, Faults.byField(e, Map.of()));
    }

    private ModelAndView page(HttpStatus status, Caller caller, UUID animalId, Map<String, List<String>> faults) {
        ModelAndView page = new ModelAndView("pictures", status);
        page.addObject("sheets", List.of("animal"));
        page.addObject("animal", animalId);
        page.addObject(
                "name",
                animals.find(caller.organisationId(), animalId)
                        .orElseThrow(() -> ProblemException.notFound("animal"))
                        .name()
                        .orElse(null));
        page.addObject(
                "files",
                attachments.list(caller.organisationId(), animalId).stream()
                        .map(Shown::of)
                        .toList());
        page.addObject("zone", caller.zone());
        page.addObject("typed", SentForm.empty());
        page.addObject("faults", faults);
        page.addObject("sentBefore", false);
        page.addObject("kept", false);
        page.addObject("mayKeep", caller.isKeeperOrClinician());
        page.addObject("key", UUID.randomUUID().toString());
        return page;
    }
}
