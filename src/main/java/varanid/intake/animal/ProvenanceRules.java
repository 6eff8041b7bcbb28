package varanid.intake.animal;

import java.util.List;

/**
 * Which evidence of origin is asked for, and what each answer says.
 *
 * @param wildLikelyFrom from this sum of points on, wild-likely
 * @param captiveLikelyUpTo up to this sum, captive-likely; less than {@code wildLikelyFrom}
 * @param questions in the order they are asked
 */
record ProvenanceRules(int wildLikelyFrom, int captiveLikelyUpTo, List<Question> questions) {

    ProvenanceRules {
        if (captiveLikelyUpTo >= wildLikelyFrom) {
            throw new IllegalArgumentException("an animal could be wild-likely and captive-likely at once");
        }
        questions = List.copyOf(questions);
        if (questions.stream().map(Question::id).distinct().count() != questions.size()) {
            throw new IllegalArgumentException("a question is there twice");
        }
    }

    /**
     * One question.
     *
     * @param id its code
     * @param text as it is asked
     * @param yes what a yes says
     * @param no what a no says
     */
    record Question(String id, String text, Says yes, Says no) {}

    /**
     * What an answer says.
     *
     * @param points more than zero for the wild, less than zero for captivity
     * @param reason the same in words
     */
    record Says(int points, String reason) {}
}
