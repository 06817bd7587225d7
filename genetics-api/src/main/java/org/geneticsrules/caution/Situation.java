package org.geneticsrules.caution;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.geneticsrules.trait.Phenotype;

/**
 * What an answer is about, as far as cautions depend on it.
 *
 * @param question the kind of question, for example {@code mating}
 * @param looks the looks that occur or may occur, by role
 * @param relation how the parents are related, if the question has parents
 */
public record Situation(String question, Map<Role, List<Phenotype>> looks, Optional<Relation> relation) {

    /**
     * Copies the looks.
     *
     * @param question the kind of question
     * @param looks the looks by role
     * @param relation how the parents are related
     */
    public Situation {
        ImmutableMap.Builder<Role, List<Phenotype>> copy = ImmutableMap.builder();
        looks.forEach((role, phenotypes) -> copy.put(role, ImmutableList.copyOf(phenotypes)));
        looks = copy.buildOrThrow();
    }

    /**
     * Returns a situation without animals.
     *
     * @param question the kind of question
     * @return the situation
     */
    public static Situation of(String question) {
        return new Situation(question, ImmutableMap.of(), Optional.empty());
    }

    /**
     * Returns this situation with further looks.
     *
     * @param role whose looks they are
     * @param phenotypes full or partial phenotypes
     * @return a copy
     */
    public Situation with(Role role, List<Phenotype> phenotypes) {
        Map<Role, List<Phenotype>> more = new LinkedHashMap<>(looks);
        List<Phenotype> all = new ArrayList<>(Objects.requireNonNull(looks.getOrDefault(role, ImmutableList.of())));
        all.addAll(phenotypes);
        more.put(role, all);
        return new Situation(question, more, relation);
    }

    /**
     * Returns this situation with the relation of the parents.
     *
     * @param between how they are related
     * @return a copy
     */
    public Situation with(Relation between) {
        return new Situation(question, looks, Optional.of(between));
    }
}
