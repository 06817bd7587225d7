package org.geneticsrules.answer;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.NamedRecords;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.trait.Confusions;
import org.geneticsrules.trait.Judgeable;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Reading;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;
import org.geneticsrules.trait.Trait;

/**
 * What of the looks of one animal is evidence under a model, and what is only kept: traits that the model does not rule, and readings
 * made earlier than the trait can be told, or in a light in which it cannot.
 *
 * @param sightings looks that are evidence
 * @param several records that are evidence and leave several looks open, as names do
 * @param names what names say that is among these
 * @param notices what is none, and why
 * @param takenAsTold traits read at a stage that does not state the count from which they can be told; they are taken as told
 * @param takenAsLit traits that can be told in some lights only, read in one that is not stated; they are taken as told
 */
record Evident(
        List<Sighting> sightings,
        List<Reading> several,
        List<NamedRecords.Reading> names,
        List<String> notices,
        Set<String> takenAsTold,
        Set<Trait> takenAsLit) {

    static final Evident NOTHING = new Evident(
            ImmutableList.of(),
            ImmutableList.of(),
            ImmutableList.of(),
            ImmutableList.of(),
            ImmutableSet.of(),
            ImmutableSet.of());

    Evident {
        sightings = ImmutableList.copyOf(sightings);
        several = ImmutableList.copyOf(several);
        names = ImmutableList.copyOf(names);
        notices = ImmutableList.copyOf(notices);
        takenAsTold = ImmutableSet.copyOf(takenAsTold);
        takenAsLit = ImmutableSet.copyOf(takenAsLit);
    }

    /** Compares a sighting with the catalogue; it may state the sex too. */
    static Sighting check(Model model, Sighting sighting) {
        sighting.light().ifPresent(model.catalogue()::checkLight);
        return new Sighting(model.catalogue().check(sighting.stage()), check(model, sighting.look()), sighting.light());
    }

    /** Compares a look with the catalogue; it may state the sex too, which then comes first. */
    static Phenotype check(Model model, Phenotype look) {
        Map<String, String> states = new LinkedHashMap<>();
        List<Problem> problems = new ArrayList<>();
        look.state(Sex.VARIABLE).ifPresent(word -> {
            if (Sex.of(word).isEmpty()) {
                problems.add(Problems.unknown(Stage.REFERENCES, "unknown-sex", "", "sex", word, Sex.words()));
            }
            states.put(Sex.VARIABLE, word);
        });
        Set<String> traits = new LinkedHashSet<>(look.traits());
        traits.remove(Sex.VARIABLE);
        Phenotype rest = look.restrictedTo(traits);
        try {
            states.putAll(model.catalogue().check(rest).asMap());
        } catch (ProblemsException e) {
            problems.addAll(e.problems());
        }
        if (!problems.isEmpty()) {
            throw new ProblemsException(problems);
        }
        return Phenotype.from(states);
    }

    /**
     * Adds a sighting.
     *
     * @param of whose look it is, for the notices, with a space in front; may be empty
     */
    Evident and(Model model, String of, Sighting sighting) {
        return and(
                model,
                sighting,
                trait -> "the look \"" + trait + "\"" + of + " says",
                trait -> "the look \"" + trait + ": "
                        + sighting.look().state(trait).orElse("") + "\"" + of + " was read");
    }

    /**
     * Adds a sighting.
     *
     * @param tells begins a notice of a trait that the model does not rule
     * @param read begins a notice of a trait that cannot be told
     */
    private Evident and(Model model, Sighting sighting, Function<String, String> tells, Function<String, String> read) {
        List<String> more = new ArrayList<>(notices);
        Set<String> taken = new LinkedHashSet<>(takenAsTold);
        Set<Trait> lit = new LinkedHashSet<>(takenAsLit);
        Set<String> kept = new LinkedHashSet<>();
        for (String trait : sighting.look().traits()) {
            if (trait.equals(Sex.VARIABLE)) {
                kept.add(trait);
            } else if (!model.visibleTraits().contains(trait)) {
                String reason = model.notModelled().getOrDefault(trait, "the model has no rule for it");
                more.add(tells.apply(trait) + " nothing about the genotype here: " + reason);
            } else {
                Trait described = model.catalogue().trait(trait).orElseThrow();
                Judgeable judgeable = described.judgeable(sighting.stage());
                Judgeable inLight = described.judgeable(sighting.light());
                if (judgeable == Judgeable.NO) {
                    more.add(read.apply(trait) + " at " + sighting.stage()
                            + ", before it can be told; it is kept but is no evidence;"
                            + " look again from " + from(model, trait) + " on");
                } else if (inLight == Judgeable.NO) {
                    more.add(read.apply(trait) + " in " + sighting.light().orElseThrow()
                            + ", in which it cannot be told; it is kept but is no evidence; look again in "
                            + String.join(" or ", described.judgeableIn()));
                } else {
                    kept.add(trait);
                    if (judgeable == Judgeable.UNKNOWN) {
                        taken.add(trait);
                    }
                    if (inLight == Judgeable.UNKNOWN) {
                        lit.add(described);
                    }
                }
            }
        }
        Phenotype evidence = sighting.look().restrictedTo(kept);
        List<Sighting> all = new ArrayList<>(sightings);
        if (!evidence.traits().isEmpty()) {
            all.add(new Sighting(sighting.stage(), evidence));
        }
        return new Evident(all, several, names, new ArrayList<>(new LinkedHashSet<>(more)), taken, lit);
    }

    /**
     * Adds what a name says of traits that could be told. It may cover several looks, so that notices name no state.
     *
     * @param name what the name says, which is something
     * @param sighting one of its looks, whose stage and light are those of all
     */
    Evident and(Model model, NamedRecords.Reading name, Sighting sighting) {
        Set<Phenotype> looks = name.looks().orElseThrow();
        String said = "what \"" + name.name().word() + "\" says of ";
        Evident one =
                NOTHING.and(model, sighting, trait -> said + trait + " tells", trait -> said + trait + " was said");
        List<String> more = new ArrayList<>(notices);
        more.addAll(one.notices());
        Set<String> taken = new LinkedHashSet<>(takenAsTold);
        taken.addAll(one.takenAsTold());
        Set<Trait> lit = new LinkedHashSet<>(takenAsLit);
        lit.addAll(one.takenAsLit());
        List<Sighting> single = new ArrayList<>(sightings);
        List<Reading> open = new ArrayList<>(several);
        List<NamedRecords.Reading> used = new ArrayList<>(names);
        if (!one.sightings().isEmpty()) {
            used.add(name);
        }
        for (Sighting told : one.sightings()) {
            Set<Phenotype> left = new LinkedHashSet<>();
            looks.forEach(look -> left.add(look.restrictedTo(told.look().traits())));
            if (left.size() == 1) {
                single.add(told);
            } else {
                open.add(new Reading(told.stage(), left));
            }
        }
        return new Evident(single, open, used, new ArrayList<>(new LinkedHashSet<>(more)), taken, lit);
    }

    /** All that is evidence, as records. */
    List<Reading> readings() {
        return ImmutableList.<Reading>builder()
                .addAll(Reading.ofAll(sightings))
                .addAll(several)
                .build();
    }

    /** The same with stages completed where what they lack does not matter to the animal. */
    Evident settled(CompiledModel compiled, Stages stages) {
        List<Sighting> all = sightings.stream()
                .map(seen -> new Sighting(
                        stages.settle(
                                seen.stage(), when -> compiled.evidence(List.of(new Sighting(when, seen.look())))),
                        seen.look()))
                .toList();
        List<Reading> open = several.stream()
                .map(one -> new Reading(
                        stages.settle(
                                one.stage(),
                                when -> compiled.evidence(List.of(new Reading(when, one.looks())), Confusions.none())),
                        one.looks()))
                .toList();
        return new Evident(all, open, names, notices, takenAsTold, takenAsLit);
    }

    /** From when on a trait can be told. */
    static LifeStage from(Model model, String trait) {
        return model.catalogue().trait(trait).orElseThrow().judgeableFrom().orElseThrow();
    }
}
