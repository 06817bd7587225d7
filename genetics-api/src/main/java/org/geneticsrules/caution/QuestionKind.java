package org.geneticsrules.caution;

import java.util.Locale;

/**
 * The kinds of question that a caution can go with. The list is closed, so that a misspelt kind is found when cautions are read and
 * not noticed by the silence of a caution.
 */
public enum QuestionKind {
    /** What an animal looks like, and why. */
    COAT,
    /** What was seen of an animal, and whether it can all be one animal. */
    DESCRIPTION,
    /** What an animal may carry unseen. */
    CARRIERS,
    /** What a coat is called. */
    NAME,
    /** What two parents may have. */
    MATING,
    /** Whether a litter fits what is believed of its parents. */
    LITTER,
    /** Whether an animal can be a parent of another. */
    PARENTAGE,
    /** Whether recorded animals fit together. */
    RECORDS,
    /** Which animals to mate. */
    PLAN,
    /** What to tell a buyer or adopter. */
    SALE,
    /** Which of several beliefs about inheritance fits. */
    HYPOTHESIS,
    /** A task for learners. */
    EXERCISE;

    /**
     * Returns the word for this kind in documents and situations.
     *
     * @return for example {@code mating}
     */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
