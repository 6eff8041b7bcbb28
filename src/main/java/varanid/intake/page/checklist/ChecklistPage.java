package varanid.intake.page.checklist;

import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.servlet.ModelAndView;
import varanid.intake.checklist.Catalogue;
import varanid.intake.checklist.Edition;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.Given;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.Query;
import varanid.intake.scoring.ChecklistDraft.Section;

/** One version of a checklist, whole or one section of it. */
@Controller
class ChecklistPage {

    private final Catalogue catalogue;

    ChecklistPage(Catalogue catalogue) {
        this.catalogue = catalogue;
    }

    /** The newest version of the first checklist; a service with more lists the others below it. */
    @GetMapping("/checklist")
    ModelAndView newest(Caller caller, Query query) {
        return page(catalogue.list().stream().findFirst().flatMap(first -> catalogue.findNewest(first.id())), query);
    }

    @GetMapping("/checklist/{id}/versions/{version}")
    ModelAndView version(Caller caller, @PathVariable String id, @PathVariable int version, Query query) {
        return page(catalogue.find(id, version), query);
    }

    private ModelAndView page(Optional<Edition> found, Query query) {
        Edition edition = found.orElseThrow(() -> ProblemException.notFound("checklist"));
        Given<Section> section =
                query.choice("section", edition.checklist().draft().sections(), Section::id);
        query.orThrow();
        ModelAndView page = new ModelAndView("checklist");
        page.addObject("sheets", List.of("checklist"));
        page.addObject("it", new ShownChecklist(edition, section.find()));
        page.addObject("editions", catalogue.list());
        return page;
    }
}
