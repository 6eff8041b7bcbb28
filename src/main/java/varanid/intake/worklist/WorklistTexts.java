package varanid.intake.worklist;

import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import org.springframework.stereotype.Component;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.dataformat.yaml.YAMLMapper;
import varanid.intake.platform.reference.ReferenceFile;
import varanid.intake.quarantine.Isolation;
import varanid.intake.quarantine.RoundsOrder;
import varanid.intake.quarantine.WorkPlace;
import varanid.intake.vet.VetAnswer;

/** The words of {@code shared/reference/worklist.yaml}. */
@Component
class WorklistTexts {

    private static final String PATH = "/shared/reference/worklist.yaml";

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.ENGLISH);

    private final TextFile file;

    WorklistTexts() {
        YAMLMapper yaml = YAMLMapper.builder()
                .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
                .enable(DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES)
                .build();
        file = ReferenceFile.read(PATH, file -> yaml.readValue(file, TextFile.class));
        for (WorkPlace place : WorkPlace.values()) {
            for (Isolation isolation : Isolation.values()) {
                reminder(place.code(), isolation.code());
            }
        }
    }

    NotLookedAt notLookedAt() {
        return file.notLookedAt();
    }

    /** The title of a task beside the plan. */
    String title(String kind, String what) {
        Titled titled = file.tasks().get(kind);
        if (titled == null) {
            throw new IllegalStateException(PATH + " has no task " + kind);
        }
        return titled.title().replace("{what}", what);
    }

    /** Why a diary entry asks for a look. */
    String lookNow(String sign) {
        return Objects.requireNonNull(file.lookNow().get(sign), () -> PATH + " has no reason to look: " + sign);
    }

    String newOrWorse(String what) {
        return file.newOrWorse().replace("{what}", what);
    }

    /** Several signs that add up. */
    String together(String what) {
        return file.together().replace("{what}", what);
    }

    /** A sign that a vet has to be called for. */
    String newSinceAnswer(String what) {
        return file.newSinceAnswer().replace("{what}", what);
    }

    String answered(VetAnswer answer, ZoneId zone) {
        return filled(file.answered(), answer, zone);
    }

    String unconfirmed(VetAnswer answer, ZoneId zone) {
        return filled(file.unconfirmed(), answer, zone);
    }

    private static String filled(String text, VetAnswer answer, ZoneId zone) {
        return text.replace("{day}", DAY.format(LocalDate.ofInstant(answer.answeredAt(), zone)))
                .replace("{name}", answer.writer().name())
                .replace("{practice}", answer.writer().practice());
    }

    /** What to remember at that stop of the rounds. */
    String reminder(RoundsOrder.Stop stop) {
        return reminder(stop.workPlace().code(), stop.isolation().code());
    }

    private String reminder(String place, String isolation) {
        return file.reminders().stream()
                .filter(line -> line.place().equals(place) && line.isolation().equals(isolation))
                .map(Reminder::text)
                .findFirst()
                .orElseThrow(
                        () -> new IllegalStateException(PATH + " has no reminder for " + place + ", " + isolation));
    }

    /** What is said of an animal that nobody has looked at. */
    record NotLookedAt(String headline, String words, String source) {}

    private record Reminder(String place, String isolation, String text, String source) {}

    private record Titled(String title, String source) {}

    private record TextFile(
            String asOf,
            NotLookedAt notLookedAt,
            Map<String, Titled> tasks,
            Map<String, String> lookNow,
            String newOrWorse,
            String together,
            String newSinceAnswer,
            String answered,
            String unconfirmed,
            List<Reminder> reminders) {}
}
