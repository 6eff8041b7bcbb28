package varanid.intake.report;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.dataformat.yaml.YAMLMapper;
import varanid.intake.platform.reference.ReferenceFile;

/** What {@code shared/reference/reports.yaml} says: which codes there are, and the words for them. */
@Component
public class ReportWords {

    private static final String PATH = "/shared/reference/reports.yaml";

    private static final YAMLMapper YAML = YAMLMapper.builder()
            .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .build();

    private final ReportFile file;

    ReportWords() {
        file = ReferenceFile.read(PATH, file -> YAML.readValue(file, ReportFile.class));
    }

    /** What the field of {@link Told} is called. */
    public String label(String field) {
        return fields().stream()
                .filter(each -> each.id().equals(field))
                .findFirst()
                .map(Field::label)
                .orElseThrow(() -> new IllegalArgumentException("no field of a report: " + field));
    }

    public String lamp(String code) {
        return words(lamps(), code);
    }

    public String temperature(String code) {
        return temperatures().stream()
                .filter(each -> each.code().equals(code))
                .findFirst()
                .map(WarmPlace::label)
                .orElse(code);
    }

    public String reproductiveState(String code) {
        return words(reproductiveStates(), code);
    }

    public String handlingRisk(String code) {
        return words(handlingRisks(), code);
    }

    public String yesNoUnknown(String code) {
        return words(yesNoUnknown(), code);
    }

    public String vulnerablePeople(String code) {
        return words(vulnerablePeople(), code);
    }

    public String consent(String code) {
        return words(consents(), code);
    }

    /** How something told is put on a page, with what goes into its braces, if anything does. */
    public String shown(String code, String... value) {
        String words = file.shown().get(code);
        if (words == null) {
            throw new IllegalArgumentException(PATH + " has no " + code + " in shown");
        }
        int open = words.indexOf('{');
        return open < 0
                ? words
                : words.substring(0, open) + String.join(" ", value) + words.substring(words.indexOf('}') + 1);
    }

    /** The same of a number, some of which have words of their own. */
    public String counted(String code, String number) {
        String own = code + "." + number;
        return shown(file.shown().containsKey(own) ? own : code, number);
    }

    /** Which cautions go with what was told, as texts. */
    public List<Caution> cautions(Standing standing) {
        boolean bitten = !standing.bites().isEmpty();
        boolean vulnerable = standing.vulnerablePeople() == null
                || !standing.vulnerablePeople().value().equals(List.of("none"));
        return file.cautions().stream()
                .filter(each -> switch (each.when()) {
                    case "always" -> true;
                    case "bitten" -> bitten;
                    case "vulnerable" -> vulnerable;
                    default -> throw new IllegalStateException("no when of a caution: " + each.when());
                })
                .map(each -> new Caution(each.id(), each.text()))
                .toList();
    }

    public List<Field> fields() {
        return file.fields();
    }

    public List<Word> lamps() {
        return file.lamps();
    }

    public List<WarmPlace> temperatures() {
        return file.temperatures();
    }

    public List<Word> reproductiveStates() {
        return file.reproductiveStates();
    }

    public List<Word> handlingRisks() {
        return file.handlingRisks();
    }

    public List<Word> yesNoUnknown() {
        return file.yesNoUnknown();
    }

    public List<Word> vulnerablePeople() {
        return file.vulnerablePeople();
    }

    public List<Word> consents() {
        return file.consents();
    }

    /** A code that was kept and that the file has no more is shown as it is. */
    private static String words(List<Word> words, String code) {
        return words.stream()
                .filter(each -> each.code().equals(code))
                .findFirst()
                .map(Word::label)
                .orElse(code);
    }

    /** Something to beware of. */
    public record Caution(String id, String text) {}

    /** @param alone whether it stands beside no other */
    public record Word(String code, String label, @Nullable Boolean alone) {

        boolean isAlone() {
            return Objects.requireNonNullElse(alone, false);
        }
    }

    /** @param lookAlikes what people mistake for it */
    public record Field(
            String id, String label, String ask, @Nullable String lookAlikes, List<String> source) {}

    /** @param likelyCelsius lowest and highest that is not asked about */
    public record WarmPlace(String code, String label, List<BigDecimal> likelyCelsius) {

        boolean isLikely(BigDecimal celsius) {
            return celsius.compareTo(likelyCelsius.get(0)) >= 0 && celsius.compareTo(likelyCelsius.get(1)) <= 0;
        }
    }

    private record CautionLine(String id, String when, String text, List<String> source) {}

    private record ReportFile(
            String asOf,
            List<Field> fields,
            Map<String, String> shown,
            List<Word> lamps,
            List<WarmPlace> temperatures,
            List<Word> reproductiveStates,
            List<Word> handlingRisks,
            List<Word> yesNoUnknown,
            List<Word> vulnerablePeople,
            List<Word> consents,
            List<CautionLine> cautions,
            Map<String, String> sources) {}
}
