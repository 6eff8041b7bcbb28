package varanid.intake.weight;

import io.swagger.v3.oas.annotations.media.Schema;
import java.util.Collection;
import java.util.List;
import java.util.Objects;

/** What stands between the readings and a sure answer, and what would help. */
@Schema(name = "WeightCaveat")
public record CaveatView(@Schema(example = "finer-scale") String caveat, String text) {

    /** In the order of {@link Caveat}. */
    static List<CaveatView> listOf(Collection<Caveat> caveats, WeightRules rules) {
        return caveats.stream()
                .sorted()
                .map(each -> new CaveatView(
                        each.code(), Objects.requireNonNull(rules.texts().get(each))))
                .toList();
    }
}
