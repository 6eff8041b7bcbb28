package varanid.intake.visit;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.dataformat.yaml.YAMLMapper;
import varanid.intake.assessment.SignWords;
import varanid.intake.platform.reference.ReferenceFile;
import varanid.intake.platform.reference.Sentence;

/** The words of {@code shared/reference/hand-over.yaml}. */
@Component
class HandOverTexts {

    private static final String PATH = "/shared/reference/hand-over.yaml";

    private final TextFile file;

    HandOverTexts() {
        YAMLMapper yaml = YAMLMapper.builder()
                .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
                .build();
        file = ReferenceFile.read(PATH, file -> yaml.readValue(file, TextFile.class));
        for (Part part : Part.values()) {
            title(part);
        }
    }

    String title(Part part) {
        return part(part).title();
    }

    /** What is said of a part of which nothing is recorded; empty where it is then left out. */
    Optional<String> nothing(Part part) {
        return Optional.ofNullable(part(part).nothing());
    }

    private PartTexts part(Part part) {
        return get(file.parts(), "parts", part.code());
    }

    /** What a statement is about. */
    String label(String code) {
        return get(file.labels(), "labels", code);
    }

    /** A sentence, filled in: names and values in turn. */
    String say(String code, String... namesAndValues) {
        return fill(get(file.says(), "says", code), namesAndValues);
    }

    /** How soon, in the words of a headline. */
    String headline(String urgency) {
        return get(file.headlines(), "headlines", urgency);
    }

    /** What a code means. */
    String word(String group, String code) {
        return get(get(file.words(), "words", group), group, code);
    }

    /** The same, and the code in plain letters where the file has no word for it. */
    String wordOr(String group, String code) {
        @Nullable Map<String, String> words = file.words().get(group);
        @Nullable String word = words == null ? null : words.get(code);
        return word == null ? plain(code) : word;
    }

    /** A code in plain letters: {@code tail-base-wasted} becomes "Tail base wasted". */
    static String plain(String code) {
        return SignWords.name(code);
    }

    /** The words of a page beside the content. */
    Map<String, String> page() {
        return file.page();
    }

    /** One of them. */
    String page(String code) {
        return get(file.page(), "page", code);
    }

    List<String> notices() {
        return file.notices();
    }

    List<Caution> cautions() {
        return file.cautions();
    }

    List<String> handlingFindings() {
        return file.handlingFindings();
    }

    int daysOfDiary() {
        return get(file.days(), "days", "diary");
    }

    private static String fill(String pattern, String... namesAndValues) {
        return Sentence.fill(PATH, pattern, namesAndValues);
    }

    private static <T> T get(Map<String, T> all, String where, String code) {
        return ReferenceFile.get(PATH, all, where, code);
    }

    /** Something to be careful of. */
    record Caution(String id, String text) {}

    private record PartTexts(String title, @Nullable String nothing) {}

    private record TextFile(
            String asOf,
            Map<String, PartTexts> parts,
            Map<String, String> labels,
            Map<String, String> says,
            Map<String, String> headlines,
            Map<String, Map<String, String>> words,
            Map<String, String> page,
            List<String> notices,
            List<Caution> cautions,
            List<String> handlingFindings,
            Map<String, Integer> days) {}
}
