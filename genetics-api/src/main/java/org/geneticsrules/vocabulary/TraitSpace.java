package org.geneticsrules.vocabulary;

import com.google.common.collect.ImmutableMap;
import com.google.common.collect.ImmutableSet;
import java.math.BigInteger;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.BoxSet;
import org.geneticsrules.trait.BoxSpace;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Sex;

/**
 * All that a name may be about: a point is a state of every trait of a catalogue, a sex and, if the catalogue has seasons, a season.
 * Immutable and thread-safe.
 */
final class TraitSpace {

    final BoxSpace boxes;

    TraitSpace(Catalogue catalogue) {
        Map<String, List<String>> variables = new LinkedHashMap<>();
        catalogue.traits().values().forEach(trait -> variables.put(trait.id(), trait.states()));
        variables.put(Sex.VARIABLE, Sex.words());
        if (!catalogue.seasons().isEmpty()) {
            variables.put(LifeStage.SEASON, catalogue.seasons());
        }
        this.boxes = BoxSpace.of(variables);
    }

    /** The values of a variable of conditions, if there is such a variable. */
    Optional<List<String>> values(String variable) {
        return boxes.names().contains(variable) ? Optional.of(boxes.values(variable)) : Optional.empty();
    }

    BoxSet of(Condition look) {
        return boxes.ofDisjoint(List.of(look));
    }

    BoxSet union(Collection<Condition> looks) {
        BoxSet all = boxes.nothing();
        for (Condition look : new LinkedHashSet<>(looks)) {
            all = all.or(of(look));
        }
        return all;
    }

    /** All that agrees with what is known of some variables. */
    BoxSet agreeing(Map<String, String> known) {
        return of(condition(known));
    }

    static Condition condition(Map<String, String> known) {
        ImmutableMap.Builder<String, Allowed> values = ImmutableMap.builder();
        known.forEach((variable, value) -> values.put(variable, Allowed.only(value)));
        return new Condition(values.buildOrThrow());
    }

    /** What is known of sex and season on an occasion. */
    static Map<String, String> known(Occasion occasion) {
        Map<String, String> known = new LinkedHashMap<>();
        occasion.sex().ifPresent(sex -> known.put(Sex.VARIABLE, sex.word()));
        occasion.stage().season().ifPresent(season -> known.put(LifeStage.SEASON, season));
        return known;
    }

    /** All that agrees with a point of the set in every variable but some: what is left of a set if these are not looked at. */
    BoxSet freed(BoxSet set, Set<String> variables) {
        if (Collections.disjoint(named(set), variables)) {
            return set;
        }
        return union(set.boxes().stream().map(box -> without(box, variables)).toList());
    }

    private static Set<String> named(BoxSet set) {
        Set<String> named = new LinkedHashSet<>();
        set.boxes().forEach(box -> named.addAll(box.names()));
        return named;
    }

    private static Condition without(Condition box, Set<String> variables) {
        ImmutableMap.Builder<String, Allowed> kept = ImmutableMap.builder();
        box.variables().forEach((variable, allowed) -> {
            if (!variables.contains(variable)) {
                kept.put(variable, allowed);
            }
        });
        return new Condition(kept.buildOrThrow());
    }

    /** The variables that decide whether a point is in a set, in declared order. */
    Set<String> decisive(BoxSet set) {
        Set<String> named = named(set);
        return boxes.names().stream()
                .filter(named::contains)
                .filter(variable -> decides(variable, set))
                .collect(ImmutableSet.toImmutableSet());
    }

    /** A variable decides nothing if what else the set holds is the same at each of its values. */
    private boolean decides(String variable, BoxSet set) {
        List<BoxSet> slices = boxes.values(variable).stream()
                .map(value -> set.and(boxes.where(variable, Allowed.only(value))))
                .toList();
        BigInteger size = slices.get(0).size();
        if (slices.stream().anyMatch(slice -> !slice.size().equals(size))) {
            return true;
        }
        BoxSet first = slid(variable, slices.get(0));
        return slices.stream()
                .skip(1)
                .anyMatch(slice -> !slid(variable, slice).minus(first).isEmpty());
    }

    /** Disjoint boxes of one value of a variable, as boxes of all its values; they are disjoint still. */
    private BoxSet slid(String variable, BoxSet slice) {
        return boxes.ofDisjoint(slice.boxes().stream()
                .map(box -> without(box, ImmutableSet.of(variable)))
                .toList());
    }
}
