package varanid.intake.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.junit.jupiter.api.Test;
import varanid.intake.platform.web.SentForm;

/** A form becomes what a program would send. */
class JsonFormTest {

    private static JsonForm form(Map<String, String> typed) {
        return new JsonForm(SentForm.filledWith(typed));
    }

    @Test
    void theNameOfAFieldIsTheWayToItsPlace() {
        JsonForm read = form(Map.of("transport.hours", "2,5", "treatments.0.what", "drops", "consent.by", "  "))
                .numbers("transport.hours")
                .texts("treatments.0.what", "treatments.0.why", "consent.by");
        assertThat(read.document())
                .hasToString("{\"transport\":{\"hours\":2.5},\"treatments\":[{\"what\":\"drops\"}]}");
    }

    @Test
    void aUnitAloneSaysNothing() {
        assertThat(form(Map.of("skin.unit", "Cel"))
                        .numbers("skin.value")
                        .units("skin.unit")
                        .document())
                .isEmpty();
        assertThat(form(Map.of("skin.unit", "Cel", "skin.value", "warm"))
                        .numbers("skin.value")
                        .units("skin.unit")
                        .document())
                .hasToString("{\"skin\":{\"value\":\"warm\",\"unit\":\"Cel\"}}");
    }

    @Test
    void linesAreAListAndTheEmptyOnesAreNone() {
        assertThat(form(Map.of("questions", "One?\n\nTwo?")).lines("questions").document())
                .hasToString("{\"questions\":[\"One?\",\"Two?\"]}");
    }

    @Test
    void whatIsWrongLeadsToItsFieldAndWhatIsWrongWithAnObjectToItsFirst() {
        Map<String, String> fields =
                form(Map.of()).texts("lastMeal.food", "lastMeal.on", "note").fieldsByPointer();
        assertThat(fields)
                .containsEntry("#/lastMeal/on", "lastMeal.on")
                .containsEntry("#/lastMeal", "lastMeal.food")
                .containsEntry("#/note", "note");
        assertThat(fields.keySet()).last().asString().hasSizeLessThan("#/lastMeal".length());
    }
}
