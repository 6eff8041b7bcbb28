package varanid.intake.share;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.springframework.http.HttpHeaders;
import org.springframework.stereotype.Component;
import org.thymeleaf.ITemplateEngine;
import org.thymeleaf.context.Context;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.PropertyNamingStrategies;
import tools.jackson.databind.annotation.JsonNaming;
import tools.jackson.dataformat.yaml.YAMLMapper;
import varanid.intake.platform.reference.ReferenceFile;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.ProblemType;

/**
 * What is answered where a link opens nothing, to programs and as a page, in the words of {@code
 * shared/reference/links.yaml}. None knows of a link: they cannot tell the reason.
 */
@Component
class Refusals {

    private static final String PATH = "/shared/reference/links.yaml";

    private final ITemplateEngine templates;
    private final WordFile words;

    Refusals(ITemplateEngine templates) {
        this.templates = templates;
        YAMLMapper yaml = YAMLMapper.builder()
                .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
                .build();
        words = ReferenceFile.read(PATH, file -> yaml.readValue(file, WordFile.class));
    }

    /**
     * 404.
     *
     * @param sent whether somebody wrote something and sent it
     */
    ProblemException opensNothing(boolean sent) {
        return refusal(ProblemType.NOT_FOUND, words.opensNothing(), sent, Map.of());
    }

    /**
     * 429.
     *
     * @param sent whether somebody wrote something and sent it
     */
    ProblemException openedTooOften(boolean sent, Duration wait) {
        String seconds = Long.toString(wait.plusMillis(999).toSeconds());
        return refusal(
                ProblemType.TOO_MANY_REQUESTS, words.openedTooOften(), sent, Map.of(HttpHeaders.RETRY_AFTER, seconds));
    }

    /** With a disposition: the framework would give one by how the address ends, and refusals are to look the same. */
    private ProblemException refusal(ProblemType type, Said said, boolean sent, Map<String, String> headers) {
        Map<String, String> all = new HashMap<>(headers);
        all.put(HttpHeaders.CONTENT_DISPOSITION, "inline");
        all.put(HttpHeaders.CACHE_CONTROL, "no-store");
        return new ProblemException(type, said.shortly(), List.of(), all).shownAs(page(said, sent));
    }

    private String page(Said said, boolean sent) {
        Context it = new Context(Locale.ENGLISH);
        it.setVariable("title", said.title());
        it.setVariable("danger", words.danger());
        it.setVariable(
                "paragraphs",
                Stream.concat(said.paragraphs().stream(), sent ? Stream.of(words.notKept()) : Stream.empty())
                        .toList());
        return templates.process("link-refused", it);
    }

    @JsonNaming(PropertyNamingStrategies.KebabCaseStrategy.class)
    private record WordFile(
            @JsonProperty("asOf") String asOf, Said opensNothing, Said openedTooOften, String notKept, String danger) {}

    private record Said(String title, @JsonProperty("short") String shortly, List<String> paragraphs) {}
}
