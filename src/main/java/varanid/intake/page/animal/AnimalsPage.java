package varanid.intake.page.animal;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import varanid.intake.animal.Animals;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.Role;

/** The animals of the organisation, and a way to find one. */
@Controller
class AnimalsPage {

    static final int MOST = 50;
    private static final int LONGEST_SEARCH = 100;

    private final Animals animals;

    AnimalsPage(Animals animals) {
        this.animals = animals;
    }

    /**
     * @param find a part of the name or of the tag
     * @param after the last one of the page before
     */
    @GetMapping("/animals")
    ModelAndView animals(
            Caller caller,
            @RequestParam(defaultValue = "") String find,
            @RequestParam(required = false) @Nullable UUID after) {
        String wanted = find.replaceAll("\\p{Cntrl}", " ").strip();
        wanted = wanted.substring(0, Math.min(wanted.length(), LONGEST_SEARCH));
        List<Animals.Newcomer> found =
                animals.search(caller.organisationId(), wanted, Optional.ofNullable(after), MOST + 1);
        ModelAndView page = new ModelAndView("animals");
        page.addObject("sheets", List.of("animal"));
        page.addObject("animals", found.stream().limit(MOST).toList());
        page.addObject("find", wanted);
        page.addObject("first", after == null);
        page.addObject("any", !found.isEmpty() || animals.hasAny(caller.organisationId()));
        page.addObject("mayKeep", caller.may(Role.KEEPER));
        page.addObject("next", found.size() > MOST ? found.get(MOST - 1).id() : null);
        return page;
    }
}
