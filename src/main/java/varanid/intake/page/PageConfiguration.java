package varanid.intake.page;

import java.util.List;
import java.util.Locale;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.web.servlet.LocaleResolver;

@Configuration(proxyBeanMethods = false)
class PageConfiguration {

    /** The languages that there are texts in. Another is a file {@code messages_<language>.properties}, and a word here. */
    private static final List<Locale> LANGUAGES = List.of(Locale.ENGLISH);

    @Bean
    LocaleResolver localeResolver() {
        return new ReaderLocale(LANGUAGES);
    }
}
