package org.geneticsrules.caution;

import com.google.common.collect.ImmutableSet;
import java.util.Set;
import org.geneticsrules.trait.Condition;

/** When a caution is due. Immutable and thread-safe. */
public sealed interface Trigger {

    /** Due with every answer. */
    record Always() implements Trigger {}

    /**
     * Due with some kinds of question.
     *
     * @param kinds kinds of question, for example {@code mating}
     */
    record OnQuestion(Set<String> kinds) implements Trigger {
        /**
         * Copies the kinds.
         *
         * @param kinds kinds of question
         */
        public OnQuestion {
            kinds = ImmutableSet.copyOf(kinds);
        }
    }

    /**
     * Due when an animal in one of some roles shows, or may show, a look.
     *
     * @param look the states of traits that must be shown together
     * @param roles whose look is meant
     */
    record OnLook(Condition look, Set<Role> roles) implements Trigger {
        /**
         * Copies the roles.
         *
         * @param look the look
         * @param roles whose look is meant
         */
        public OnLook {
            roles = ImmutableSet.copyOf(roles);
        }
    }

    /**
     * Due when the parents of a mating are related in some way.
     *
     * @param relations the relations meant
     */
    record OnRelation(Set<Relation> relations) implements Trigger {
        /**
         * Copies the relations.
         *
         * @param relations the relations meant
         */
        public OnRelation {
            relations = ImmutableSet.copyOf(relations);
        }
    }
}
