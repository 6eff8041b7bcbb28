package varanid.intake.measures;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.InputStream;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.fhir.ucum.Decimal;
import org.fhir.ucum.UcumEssenceService;
import org.fhir.ucum.UcumException;
import org.fhir.ucum.UcumService;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Our unit codes against an independent reading of UCUM: the library org.fhir:ucum with its copy of ucum-essence. */
class UnitCodesTest {

    private static UcumService ucum;

    @BeforeAll
    static void load() throws Exception {
        try (InputStream essence = UcumService.class.getResourceAsStream("/ucum-essence.xml")) {
            ucum = new UcumEssenceService(Objects.requireNonNull(essence));
        }
    }

    @Test
    void everyCodeWeTakeIsOne() {
        Stream.of(
                        Arrays.stream(MassUnit.values()).map(MassUnit::code),
                        Arrays.stream(LengthUnit.values()).map(LengthUnit::code),
                        Arrays.stream(TemperatureUnit.values()).map(TemperatureUnit::code))
                .flatMap(codes -> codes)
                .forEach(code -> assertThat(ucum.validate(code)).as(code).isNull());
    }

    @Test
    void ourFactorsAreTheirs() throws UcumException {
        for (MassUnit unit : MassUnit.values()) {
            assertThat(unit.grams()).as(unit.code()).isEqualByComparingTo(one(unit.code(), "g"));
        }
        for (LengthUnit unit : LengthUnit.values()) {
            assertThat(unit.millimetres()).as(unit.code()).isEqualByComparingTo(one(unit.code(), "mm"));
        }
    }

    @Test
    void whatPeopleWriteInsteadIsRefusedByBoth() {
        for (String code : List.of("grammes", "GRAM", "inch", "degC", "lbs", "ounces")) {
            assertThat(ucum.validate(code)).as(code).isNotNull();
            assertThat(MassUnit.find(code)).as(code).isEmpty();
            assertThat(LengthUnit.find(code)).as(code).isEmpty();
            assertThat(TemperatureUnit.find(code)).as(code).isEmpty();
        }
    }

    /** Why temperatures are checked by their own anchors and not here. */
    @Test
    void thatLibraryDoesNotConvertTemperatures() {
        assertThatThrownBy(() -> ucum.convert(new Decimal("75"), "[degF]", "Cel"));
    }

    private static BigDecimal one(String from, String to) throws UcumException {
        return new BigDecimal(ucum.convert(new Decimal("1"), from, to).asDecimal());
    }
}
