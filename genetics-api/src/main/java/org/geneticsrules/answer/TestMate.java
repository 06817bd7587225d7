package org.geneticsrules.answer;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.geneticsrules.caution.Relation;
import org.geneticsrules.cross.Mate;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Population;
import org.geneticsrules.trait.Sighting;

/**
 * The mates that an animal may be tested by: animals of one description.
 *
 * <pre>{@code
 * TestMate albino = TestMate.of("an albino", Animal.unknown(compiled).withGenotype("c/c", OmittedLoci.WILD_TYPE));
 * TestMate daughters = TestMate.ownYoung("own daughters", jill).seen(Sighting.of(Phenotype.of("eye colour", "dark")));
 * }</pre>
 *
 * @param name what to call them
 * @param kind how they are known
 * @param animals the mate itself, or the other parent of own young, or the sire and the dam of the mate
 * @param seen what was seen of each mate that is known by its parents
 * @param sibs true if mates that are known by their parents have these in common
 * @param relation how each is related to the animal that is tested
 */
public record TestMate(
        String name, Kind kind, List<Animal> animals, List<Sighting> seen, boolean sibs, Relation relation) {

    /** How a mate is known. */
    public enum Kind {
        /** By what is stated of it. */
        KNOWN,
        /** As young of the animal that is tested. */
        OWN_YOUNG,
        /** As young of two other animals. */
        YOUNG_OF_TWO;

        /**
         * Returns the word for the kind in documents.
         *
         * @return for example {@code own young}
         */
        public String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }
    }

    /**
     * Copies the lists.
     *
     * @param name what to call them
     * @param kind how they are known
     * @param animals who is known
     * @param seen what was seen of each
     * @param sibs whether they are sibs
     * @param relation how they are related to the animal
     * @throws IllegalArgumentException if there are not as many animals as the kind needs
     */
    public TestMate {
        animals = ImmutableList.copyOf(animals);
        seen = ImmutableList.copyOf(seen);
        int needed = kind == Kind.YOUNG_OF_TWO ? 2 : 1;
        if (animals.size() != needed) {
            throw new IllegalArgumentException(
                    "mates that are " + kind.word() + " need " + needed + " animals, but got " + animals.size());
        }
    }

    /**
     * Returns mates of whom something is stated, and whose relation to the animal is unknown.
     *
     * @param name what to call them
     * @param animal what is known of each of them
     * @return the mates
     */
    public static TestMate of(String name, Animal animal) {
        return new TestMate(name, Kind.KNOWN, List.of(animal), List.of(), false, Relation.UNKNOWN);
    }

    /**
     * Returns daughters, or sons, of the animal.
     *
     * @param name what to call them
     * @param partner what is known of their other parent, which each of them has for itself
     * @return the mates, whose young would be closely inbred
     */
    public static TestMate ownYoung(String name, Animal partner) {
        return new TestMate(name, Kind.OWN_YOUNG, List.of(partner), List.of(), false, Relation.PARENT_OFFSPRING);
    }

    /**
     * Returns young of two other animals, whose relation to the animal is unknown.
     *
     * @param name what to call them
     * @param sire what is known of the sire, which each of them has for itself
     * @param dam what is known of the dam, which each of them has for itself
     * @return the mates
     */
    public static TestMate youngOf(String name, Animal sire, Animal dam) {
        return new TestMate(name, Kind.YOUNG_OF_TWO, List.of(sire, dam), List.of(), false, Relation.UNKNOWN);
    }

    /**
     * Returns the same mates, related to the animal in some way.
     *
     * @param between the relation
     * @return a copy
     */
    public TestMate related(Relation between) {
        return new TestMate(name, kind, animals, seen, sibs, between);
    }

    /**
     * Returns the same mates as brothers or sisters of one another.
     *
     * @return a copy
     */
    public TestMate asSibs() {
        return new TestMate(name, kind, animals, seen, kind != Kind.KNOWN, relation);
    }

    /**
     * Returns the same mates, chosen by their look.
     *
     * @param sighting what was seen of each of them
     * @return a copy
     */
    public TestMate seen(Sighting sighting) {
        return kind == Kind.KNOWN
                ? new TestMate(name, kind, List.of(animals.get(0).seen(sighting)), seen, sibs, relation)
                : new TestMate(
                        name,
                        kind,
                        animals,
                        ImmutableList.<Sighting>builder()
                                .addAll(seen)
                                .add(sighting)
                                .build(),
                        sibs,
                        relation);
    }

    /** The same for the engine; who names no population of its own comes from one, if one is given. */
    Mate mate(Optional<Population> unstated) {
        List<Animal> from = animals.stream()
                .map(animal -> animal.population().isPresent()
                        ? animal
                        : unstated.map(animal::from).orElse(animal))
                .toList();
        Mate mate = switch (kind) {
            case KNOWN -> Mate.of(from.get(0).parent());
            case OWN_YOUNG -> Mate.ownYoung(from.get(0).parent());
            case YOUNG_OF_TWO -> Mate.youngOf(from.get(0).parent(), from.get(1).parent());
        };
        for (Sighting one : seen) {
            mate = mate.seen(one);
        }
        return sibs ? mate.asSibs() : mate;
    }

    /** Returns the name. */
    @Override
    public String toString() {
        return name;
    }

    /** The same mates under another model. */
    TestMate under(CompiledModel other) {
        return new TestMate(
                name, kind, animals.stream().map(one -> one.under(other)).toList(), seen, sibs, relation);
    }
}
