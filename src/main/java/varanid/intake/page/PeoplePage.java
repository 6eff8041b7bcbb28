package varanid.intake.page;

import jakarta.servlet.http.HttpServletRequest;
import java.net.URI;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.HttpStatusCode;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;
import varanid.intake.account.Team;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.PublicAddress;
import varanid.intake.platform.web.QrCode;
import varanid.intake.platform.web.Role;

/** The people of the organisation, and how each gets in. */
@Controller
class PeoplePage {

    private static final int MOST = 50;
    private static final int QR_PIXELS = 200;

    private final Team team;
    private final PublicAddress address;

    PeoplePage(Team team, PublicAddress address) {
        this.team = team;
        this.address = address;
    }

    @GetMapping("/people")
    ModelAndView people(Caller caller, @RequestParam(required = false) @Nullable UUID after) {
        caller.require(Role.ADMINISTRATOR);
        return page(HttpStatus.OK, caller, after);
    }

    @PostMapping("/people")
    ModelAndView add(
            Caller caller,
            @RequestParam(defaultValue = "") String name,
            @RequestParam(defaultValue = "") List<String> roles) {
        ObjectNode person = JsonNodeFactory.instance.objectNode();
        if (!name.isBlank()) {
            person.put("name", name);
        }
        ArrayNode listed = person.putArray("roles");
        roles.forEach(listed::add);
        try {
            team.add(caller, JsonRequest.written(person));
        } catch (ProblemException e) {
            if (e.faults().isEmpty()) {
                throw e;
            }
            ModelAndView page = page(HttpStatus.UNPROCESSABLE_CONTENT, caller, null);
            page.addObject("name", name);
            page.addObject("chosen", roles);
            page.addObject(
                    "faulty",
                    e.faults().stream()
                            .map(fault -> String.valueOf(fault.pointer()).startsWith("#/roles") ? "roles" : "name")
                            .distinct()
                            .toList());
            return page;
        }
        return SeeOther.path("/people");
    }

    /** Shown at once and not behind a redirect: the secret is nowhere to be read again. */
    @PostMapping("/people/{id}/sign-in-link")
    ModelAndView link(Caller caller, @PathVariable UUID id, HttpServletRequest request) {
        Team.SignInLink made = team.makeSignInLink(caller, id);
        URI link = address.resolve(request, made.path());
        ModelAndView page = new ModelAndView("person-link", HttpStatus.OK);
        page.addObject("name", made.name());
        page.addObject("link", link.toString());
        page.addObject("expiresAt", made.expiresAt());
        page.addObject("zone", caller.zone());
        page.addObject("qr", QrCode.svg(link.toString(), made.name(), QR_PIXELS));
        return page;
    }

    private ModelAndView page(HttpStatusCode status, Caller caller, @Nullable UUID after) {
        List<Team.Member> found = team.list(caller, after, MOST + 1);
        ModelAndView page = new ModelAndView("people", status);
        page.addObject("people", found.stream().limit(MOST).toList());
        page.addObject("next", found.size() > MOST ? found.get(MOST - 1).id() : null);
        page.addObject("roles", Role.values());
        page.addObject("name", "");
        page.addObject("chosen", List.of(Role.KEEPER.code()));
        page.addObject("faulty", List.of());
        return page;
    }
}
