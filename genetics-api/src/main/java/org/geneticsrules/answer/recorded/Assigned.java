package org.geneticsrules.answer.recorded;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Paternity;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Sex;

/**
 * The pedigree as it would be if kits of a litter had certain sires: the kits of each male are a litter of their own. A dam who is not
 * recorded becomes an animal of whom nothing is recorded, so that she stays the dam of all.
 */
final class Assigned {

    private final Pedigree kindred;
    private final Litter litter;
    private final Optional<Individual> dam;

    Assigned(Pedigree kindred, Litter litter) {
        this.kindred = kindred;
        this.litter = litter;
        this.dam = litter.dam().isPresent() ? Optional.empty() : Optional.of(unrecorded());
    }

    /** She is of the population that her kits state, as the engine has it. */
    private Individual unrecorded() {
        Individual dam = Individual.of(Altered.fresh(kindred, "the dam of " + litter.id()), Sex.FEMALE);
        return litter.kits().stream()
                .map(kit -> kindred.individual(kit).population())
                .flatMap(Optional::stream)
                .findFirst()
                .map(dam::from)
                .orElse(dam);
    }

    /** Names the id that the litter of a male has: that of the litter itself where he has kits alone or first. */
    Pedigree with(Map<Paternity, List<String>> kitsOf) {
        List<Litter> parts = new ArrayList<>();
        Set<String> ids = new LinkedHashSet<>();
        kitsOf.forEach((sires, kits) -> {
            String id = litter.id();
            int number = 1;
            while (ids.contains(id) || (number > 1 && kindred.litters().containsKey(id))) {
                number++;
                id = litter.id() + " part " + number;
            }
            ids.add(id);
            parts.add(new Litter(
                    id,
                    litter.dam().or(() -> dam.map(Individual::id)),
                    sires,
                    litter.born(),
                    OptionalInt.empty(),
                    OptionalInt.empty(),
                    litter.fosterDam(),
                    kits));
        });
        return Altered.with(kindred, dam.map(List::of).orElse(List.of()), parts, Set.of(litter.id()))
                .build();
    }

    /** The litter as a whole with certain or uncertain sires. */
    Pedigree whole(Paternity sires) {
        return Altered.with(kindred, List.of(), List.of(litter.with(sires)), Set.of())
                .build();
    }

    /** One kit with a certain sire, the others with any of the candidates. */
    Pedigree alone(String kit, Paternity.Candidate male, Paternity others) {
        Map<Paternity, List<String>> kitsOf = new LinkedHashMap<>();
        kitsOf.put(certain(male), ImmutableList.of(kit));
        List<String> rest =
                litter.kits().stream().filter(one -> !one.equals(kit)).toList();
        if (!rest.isEmpty()) {
            kitsOf.put(others, rest);
        }
        return with(kitsOf);
    }

    /** The male as the sire beyond doubt. */
    static Paternity certain(Paternity.Candidate male) {
        return male.male()
                .map(Paternity::of)
                .orElseGet(() ->
                        Paternity.oneOf(new Paternity.Candidate(Optional.empty(), male.population(), Probability.ONE)));
    }
}
