package varanid.intake.platform.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;

class JsonFieldsTest {

    @Test
    void givesTextInNormalFormWithoutBlanksAround() {
        assertThat(this.<String>read("{\"a\":\"  Ko\u0308nig \"}", fields -> {
                    Given<String> a = fields.text("a", 5);
                    return a::get;
                }))
                .isEqualTo("K\u00F6nig");
    }

    @Test
    void countsCharactersAsPeopleDo() {
        assertThat(faults("{\"a\":\"🦎🦎\"}", fields -> {
                    fields.text("a", 2);
                    return () -> "";
                }))
                .isEmpty();
    }

    @Test
    void keepsNumbersAsTheyWereWritten() {
        assertThat(this.<BigDecimal>read("{\"a\":35.05}", fields -> {
                    Given<BigDecimal> a = fields.decimal("a", BigDecimal.ZERO, BigDecimal.TEN.pow(3), 2);
                    return a::get;
                }))
                .isEqualTo("35.05");
    }

    @Test
    void refusesNumbersWithHugeExponentsWithoutWorkingThemOut() {
        for (String number : List.of("1e-99999999", "1e99999999", "-1e99999999")) {
            assertThat(faults("{\"a\":" + number + "}", fields -> {
                        fields.decimal("a", BigDecimal.ZERO, BigDecimal.TEN, 2);
                        return () -> "";
                    }))
                    .containsExactly("#/a");
        }
    }

    @Test
    void takesNullForNotGiven() {
        assertThat(faults("{\"a\":null,\"b\":null}", fields -> {
                    fields.text("a", 5).required();
                    fields.text("b", 5);
                    return () -> "";
                }))
                .containsExactly("#/a");
    }

    @Test
    void readsOpenMapsWithEveryFaultAtItsPlace() {
        ObjectReader<Map<String, BigDecimal>> reader = fields -> {
            Given<Map<String, BigDecimal>> answers =
                    fields.entries("answers", 3, (name, value) -> value.decimal(BigDecimal.ZERO, BigDecimal.TEN, 0));
            return answers::get;
        };
        assertThat(this.read("{\"answers\":{\"x\":1,\"y\":2}}", reader)).containsOnlyKeys("x", "y");
        assertThat(faults("{\"answers\":{\"x\":11,\"y\":\"2\",\"z\":null}}", reader))
                .containsExactly("#/answers/x", "#/answers/y", "#/answers/z");
        assertThat(faults("{\"answers\":{\"a\":1,\"b\":1,\"c\":1,\"d\":1}}", reader))
                .containsExactly("#/answers");
    }

    @Test
    void makesAFaultOfAValueThatRefusesItself() {
        assertThat(faults("{\"a\":{\"b\":1}}", fields -> {
                    fields.object("a", inner -> {
                        inner.field("b");
                        Supplier<String> refuses = () -> {
                            throw new IllegalArgumentException("does not fit");
                        };
                        return refuses;
                    });
                    return () -> "";
                }))
                .containsExactly("#/a");
    }

    @Test
    void comparesTagsStrongly() {
        IfMatch.parse("\"x\", \"v3\"").require(3L);
        IfMatch.parse("*").require(3L);
        for (String header : List.of("\"v2\"", "W/\"v3\"", "v3", "")) {
            ProblemException problem = catchThrowableOfType(
                    ProblemException.class, () -> IfMatch.parse(header).require(3L));
            assertThat(problem.type()).isEqualTo(ProblemType.STALE);
        }
    }

    private <R> R read(String json, ObjectReader<R> reader) {
        byte[] bytes = json.getBytes(StandardCharsets.UTF_8);
        return new JsonRequest("POST /", bytes, StrictJson.parse(bytes), null).read(reader);
    }

    private List<String> faults(String json, ObjectReader<?> reader) {
        try {
            read(json, reader);
            return List.of();
        } catch (ProblemException problem) {
            return problem.faults().stream()
                    .map(fault -> String.valueOf(fault.pointer()))
                    .toList();
        }
    }
}
