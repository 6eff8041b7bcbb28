package varanid.intake.page;

import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.view.RedirectView;

/** The answer to a form that was taken: look there (303), where reloading sends nothing again. */
public final class SeeOther {

    private SeeOther() {}

    /** @param path of this service, already encoded */
    public static ModelAndView path(String path) {
        return new ModelAndView(new RedirectView(path, false, false, false));
    }
}
