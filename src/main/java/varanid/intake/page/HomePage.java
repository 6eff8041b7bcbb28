package varanid.intake.page;

import java.util.Map;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.servlet.ModelAndView;
import varanid.intake.platform.web.Caller;

/** Where people arrive. */
@Controller
class HomePage {

    @GetMapping("/")
    ModelAndView home(Caller caller) {
        return new ModelAndView(
                "home", Map.of("roles", caller.roles().stream().sorted().toList()));
    }
}
