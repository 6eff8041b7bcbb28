package varanid.intake.cagecard;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.dataformat.yaml.YAMLMapper;
import varanid.intake.platform.reference.ReferenceFile;
import varanid.intake.platform.reference.Sentence;

/** The words of {@code shared/reference/cage-card.yaml}. */
@Component
class CardWords {

    private static final String PATH = "/shared/reference/cage-card.yaml";

    private final TextFile file;

    CardWords() {
        YAMLMapper yaml = YAMLMapper.builder()
                .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
                .build();
        file = ReferenceFile.read(PATH, file -> yaml.readValue(file, TextFile.class));
        apart(true);
        apart(false);
        for (StayState state : StayState.values()) {
            get(file.quarantine(), "quarantine", state.code());
        }
    }

    CageCard.Apart apart(boolean strict) {
        String code = strict ? "strict" : "standard";
        IsolationTexts texts = get(file.isolation(), "isolation", code);
        return new CageCard.Apart(
                code,
                texts.label(),
                texts.brief(),
                texts.atTheDoor().stream().map(Sourced::text).toList());
    }

    /** What heads a card: names and values in turn. */
    CageCard.Line alert(String code, String... namesAndValues) {
        return new CageCard.Line(code, fill(get(file.alerts(), "alerts", code).text(), namesAndValues), true);
    }

    /** The sentences of a state: since when, and until when at least. */
    StayTexts stay(String code, String... namesAndValues) {
        StayTexts texts = get(file.quarantine(), "quarantine", code);
        return new StayTexts(fill(texts.start(), namesAndValues), fill(texts.release(), namesAndValues));
    }

    /** What was told of how it bears handling. */
    CageCard.Line told(String code, String... namesAndValues) {
        return new CageCard.Line(
                code, fill(get(file.handling().told(), "handling.told", code).text(), namesAndValues), true);
    }

    /** What holds of every monitor that is handled. */
    List<CageCard.Line> handling() {
        return file.handling().always().stream()
                .map(each -> new CageCard.Line(each.id(), each.text(), false))
                .toList();
    }

    /** What to do before it is opened, in order. */
    List<CageCard.Line> beforeOpening(boolean strict) {
        String now = strict ? "strict" : "standard";
        return file.beforeOpening().stream()
                .filter(each -> each.when() == null || now.equals(each.when()))
                .map(each -> new CageCard.Line(each.id(), each.text(), false))
                .toList();
    }

    /** In English. */
    Optional<String> commonName(String species) {
        return Optional.ofNullable(file.commonNames().names().get(species));
    }

    /** A word of the page, filled in. */
    String page(String code, String... namesAndValues) {
        return fill(get(file.page(), "page", code), namesAndValues);
    }

    Map<String, String> page() {
        return file.page();
    }

    private static String fill(String pattern, String... namesAndValues) {
        return Sentence.fill(PATH, pattern, namesAndValues);
    }

    private static <T> T get(Map<String, T> all, String where, String code) {
        return ReferenceFile.get(PATH, all, where, code);
    }

    record StayTexts(String start, String release) {}

    private record Sourced(String text, String source) {}

    private record IsolationTexts(String label, String brief, List<Sourced> atTheDoor) {}

    private record Always(String id, String text, String source) {}

    private record Handling(Map<String, Sourced> told, List<Always> always) {}

    private record Before(String id, @Nullable String when, String text, String source) {}

    private record CommonNames(String source, Map<String, String> names) {}

    private record TextFile(
            int version,
            String asOf,
            Map<String, IsolationTexts> isolation,
            Map<String, Sourced> alerts,
            Map<String, StayTexts> quarantine,
            Handling handling,
            List<Before> beforeOpening,
            CommonNames commonNames,
            Map<String, String> page) {}
}
