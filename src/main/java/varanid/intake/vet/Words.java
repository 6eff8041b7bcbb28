package varanid.intake.vet;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.PropertyNamingStrategies;
import tools.jackson.databind.annotation.JsonNaming;
import tools.jackson.dataformat.yaml.YAMLMapper;
import varanid.intake.platform.reference.ReferenceFile;
import varanid.intake.platform.reference.Sentence;
import varanid.intake.vet.Recommendation.NewSince;

/** The words of {@code shared/reference/vet-answer.yaml}. */
@Component
class Words {

    private static final String PATH = "/shared/reference/vet-answer.yaml";
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.ENGLISH);

    private static final DateTimeFormatter MOMENT =
            DateTimeFormatter.ofPattern("d MMMM yyyy, HH:mm (VV)", Locale.ENGLISH);

    private final TextFile file;

    Words() {
        YAMLMapper yaml = YAMLMapper.builder()
                .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
                .build();
        file = ReferenceFile.read(PATH, file -> yaml.readValue(file, TextFile.class));
    }

    String headline(String code, String... namesAndValues) {
        return fill(get(file.headlines(), "headlines", code), namesAndValues);
    }

    /** What heads every page. */
    String alert(List<NewSince> news, ZoneId zone) {
        return fill(
                file.alert(), "signs", news.stream().map(it -> sign(it, zone)).collect(Collectors.joining("; ")));
    }

    /** One new sign, and whether it was still there. */
    String sign(NewSince it, ZoneId zone) {
        return it.notSeenAt()
                .map(at -> fill(file.notSeenSince(), "sign", it.label(), "day", day(at, zone)))
                .orElse(it.label());
    }

    String wholeLook(String urgency) {
        return fill(file.wholeLook(), "urgency", urgency(urgency));
    }

    String urgency(String code) {
        return get(file.urgency(), "urgency", code);
    }

    String isolation(String code) {
        return get(file.isolation(), "isolation", code);
    }

    String sawAnimal(VetAnswer.SawAnimal saw) {
        return get(file.sawAnimal(), "saw-animal", saw.code());
    }

    String verdict(VetAnswer.Verdict verdict) {
        return get(file.verdict(), "verdict", verdict.code());
    }

    String ruling(VetAnswer.Ruling ruling) {
        return get(file.ruling(), "ruling", ruling.code());
    }

    /** A text of the form. */
    String form(String code, String... namesAndValues) {
        return fill(get(file.form(), "form", code), namesAndValues);
    }

    /** A moment to the minute, in the organisation's zone, which is named. */
    static String moment(Instant at, ZoneId zone) {
        return MOMENT.format(at.atZone(zone));
    }

    List<String> cautions() {
        return file.cautions();
    }

    static String day(Instant at, ZoneId zone) {
        return day(LocalDate.ofInstant(at, zone));
    }

    static String day(LocalDate day) {
        return DAY.format(day);
    }

    private static String fill(String pattern, String... namesAndValues) {
        return Sentence.fill(PATH, pattern, namesAndValues);
    }

    private static String get(Map<String, String> all, String where, String code) {
        return ReferenceFile.get(PATH, all, where, code);
    }

    @JsonNaming(PropertyNamingStrategies.KebabCaseStrategy.class)
    private record TextFile(
            @com.fasterxml.jackson.annotation.JsonProperty("asOf")
            String asOf,

            Map<String, String> headlines,
            String alert,
            String notSeenSince,
            String wholeLook,
            Map<String, String> urgency,
            Map<String, String> isolation,
            Map<String, String> sawAnimal,
            Map<String, String> verdict,
            Map<String, String> ruling,
            List<String> cautions,
            Map<String, String> form) {}
}
