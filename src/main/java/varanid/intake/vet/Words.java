package varanid.intake.vet;

import java.io.IOException;
import java.io.InputStream;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.PropertyNamingStrategies;
import tools.jackson.databind.annotation.JsonNaming;
import tools.jackson.dataformat.yaml.YAMLMapper;
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
        try (InputStream in = Words.class.getResourceAsStream(PATH)) {
            if (in == null) {
                throw new IllegalStateException("missing from the program: " + PATH);
            }
            file = yaml.readValue(in, TextFile.class);
        } catch (IOException e) {
            throw new IllegalStateException("cannot be read: " + PATH, e);
        }
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
        StringBuilder filled = new StringBuilder();
        int at = 0;
        // One pass: a value that has braces of its own stays as it is.
        while (at < pattern.length()) {
            int open = pattern.indexOf('{', at);
            int close = open < 0 ? -1 : pattern.indexOf('}', open);
            if (close < 0) {
                break;
            }
            filled.append(pattern, at, open).append(value(pattern, pattern.substring(open + 1, close), namesAndValues));
            at = close + 1;
        }
        return filled.append(pattern.substring(at)).toString();
    }

    private static String value(String pattern, String name, String... namesAndValues) {
        for (int i = 0; i + 1 < namesAndValues.length; i += 2) {
            if (namesAndValues[i].equals(name)) {
                return namesAndValues[i + 1];
            }
        }
        throw new IllegalStateException(PATH + " asks for {" + name + "} in: " + pattern);
    }

    private static String get(Map<String, String> all, String where, String code) {
        @Nullable String found = all.get(code);
        if (found == null) {
            throw new IllegalStateException(PATH + " has no " + code + " in " + where);
        }
        return found;
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
