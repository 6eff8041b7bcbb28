package varanid.intake.sample;

import java.util.Comparator;
import java.util.List;

/**
 * How probable freedom from one infection is, by the method that says most.
 *
 * @param agent its code
 * @param name in words
 * @param method in words
 * @param negatives how many negative samples count
 * @param independent the probability where repeated samples tell anew
 * @param correlated the same where they tell partly the same
 */
public record FreedomWords(
        String agent, String name, String method, int negatives, double independent, double correlated) {

    static List<FreedomWords> list(FreedomView view) {
        return view.agents().stream()
                .flatMap(agent -> agent.methods().stream()
                        .filter(method -> method.negatives() > 0)
                        .max(Comparator.comparingDouble(FreedomView.MethodLine::correlated))
                        .map(method -> new FreedomWords(
                                agent.agent(),
                                agent.name(),
                                method.name(),
                                method.negatives(),
                                method.independent(),
                                method.correlated()))
                        .stream())
                .toList();
    }
}
