package varanid.intake.animal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Weighs the evidence of an animal's origin: a sum of points, so one more sign of the wild never makes it less wild.
 * Pure.
 */
final class OriginAssessor {

    private static final String UNKNOWN_SOURCE = "U";
    private static final String WILD_SOURCE = "W";

    private final ProvenanceRules rules;

    OriginAssessor(ProvenanceRules rules) {
        this.rules = rules;
    }

    OriginView assess(Optional<SourceCode> declared, Map<String, Evidence> evidence) {
        List<OriginView.Reason> reasons = new ArrayList<>();
        declared.filter(code -> code.points() > 0)
                .ifPresent(code -> reasons.add(new OriginView.Reason(
                        "declared-origin", code.points(), "declared as " + code.code() + ": " + code.meaning())));
        for (ProvenanceRules.Question question : rules.questions()) {
            Evidence answer = evidence.getOrDefault(question.id(), Evidence.UNKNOWN);
            if (answer != Evidence.UNKNOWN) {
                ProvenanceRules.Says says = answer == Evidence.YES ? question.yes() : question.no();
                if (says.points() != 0) {
                    reasons.add(new OriginView.Reason(question.id(), says.points(), says.reason()));
                }
            }
        }
        reasons.sort(Comparator.comparing(reason -> -Math.abs(reason.points())));
        int points = reasons.stream().mapToInt(OriginView.Reason::points).sum();
        AssessedOrigin assessed = judge(points);
        return new OriginView(
                declared.map(SourceCode::code).orElse(null), assessed, points, steering(declared, assessed), reasons);
    }

    private AssessedOrigin judge(int points) {
        if (points >= rules.wildLikelyFrom()) {
            return AssessedOrigin.WILD_LIKELY;
        }
        return points <= rules.captiveLikelyUpTo() ? AssessedOrigin.CAPTIVE_LIKELY : AssessedOrigin.UNDETERMINED;
    }

    /** The declared code, unless the evidence is riskier: then unknown, or wild. */
    private static String steering(Optional<SourceCode> declared, AssessedOrigin assessed) {
        OriginRisk declaredRisk = declared.map(SourceCode::risk).orElse(OriginRisk.UNKNOWN);
        String declaredCode = declared.map(SourceCode::code).orElse(UNKNOWN_SOURCE);
        return risk(assessed).compareTo(declaredRisk) <= 0
                ? declaredCode
                : assessed == AssessedOrigin.WILD_LIKELY ? WILD_SOURCE : UNKNOWN_SOURCE;
    }

    static OriginRisk risk(AssessedOrigin assessed) {
        return switch (assessed) {
            case CAPTIVE_LIKELY -> OriginRisk.CAPTIVE;
            case UNDETERMINED -> OriginRisk.UNKNOWN;
            case WILD_LIKELY -> OriginRisk.WILD;
        };
    }
}
