package varanid.intake.page;

import com.ibm.icu.util.ULocale;
import jakarta.servlet.http.HttpServletRequest;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.springframework.web.servlet.i18n.AcceptHeaderLocaleResolver;

/**
 * In which language a page is written, and how its reader writes dates. The language is one that there are texts in; the
 * region is the reader's own, whatever their language. Who prefers German reads English texts with dates as they are
 * written in Germany.
 */
final class ReaderLocale extends AcceptHeaderLocaleResolver {

    private static final Set<String> REGIONS = Set.of(Locale.getISOCountries());

    /** @param languages those that there are texts in, the usual one first */
    ReaderLocale(List<Locale> languages) {
        setSupportedLocales(languages);
        setDefaultLocale(languages.get(0));
    }

    @Override
    public Locale resolveLocale(HttpServletRequest request) {
        Locale language = super.resolveLocale(request);
        return new Locale.Builder()
                .setLanguage(language.getLanguage())
                .setRegion(region(request))
                .build();
    }

    /** The region of the language that is liked best; where it names none, where most who speak it live. */
    private static String region(HttpServletRequest request) {
        if (request.getHeader("Accept-Language") == null) {
            return Locale.UK.getCountry();
        }
        Locale wanted = request.getLocale();
        String region = wanted.getCountry().isEmpty()
                ? ULocale.addLikelySubtags(ULocale.forLocale(wanted)).getCountry()
                : wanted.getCountry();
        return REGIONS.contains(region) ? region : Locale.UK.getCountry();
    }
}
