package org.geneticsrules.vocabulary;

import com.google.common.collect.ImmutableMap;
import com.google.common.collect.ImmutableSet;
import java.util.Collection;
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
        if (variables.isEmpty()) {
            return set;
        }
        Set<Condition> wider = new LinkedHashSet<>();
        for (Condition box : set.boxes()) {
            ImmutableMap.Builder<String, Allowed> kept = ImmutableMap.builder();
            box.variables().forEach((variable, allowed) -> {
                if (!variables.contains(variable)) {
                    kept.put(variable, allowed);
                }
            });
            wider.add(new Condition(kept.buildOrThrow()));
        }
        return union(wider);
    }

    /** The variables that decide whether a point is in a set, in declared order. */
    Set<String> decisive(BoxSet set) {
        Set<String> named = new LinkedHashSet<>();
        set.boxes().forEach(box -> named.addAll(box.names()));
        return boxes.names().stream()
                .filter(named::contains)
                .filter(variable ->
                        !freed(set, ImmutableSet.of(variable)).minus(set).isEmpty())
                .collect(ImmutableSet.toImmutableSet());
    }
}
