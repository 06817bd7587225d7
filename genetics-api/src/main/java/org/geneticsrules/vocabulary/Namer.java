package org.geneticsrules.vocabulary;

import com.google.common.collect.ImmutableSet;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.BoxSet;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Clock;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Judgeable;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Trait;
import org.geneticsrules.vocabulary.Meaning.Reading;
import org.geneticsrules.vocabulary.Naming.Difference;
import org.geneticsrules.vocabulary.Naming.InFacet;
import org.geneticsrules.vocabulary.Naming.OfName;
import org.geneticsrules.vocabulary.Naming.Standing;

/** Finds the names of one animal; the steps are those of the package's description. */
final class Namer {

    private final Vocabulary vocabulary;
    private final TraitSpace space;
    private final Occasion occasion;

    /** What is known, by variable, in catalogue order. */
    private final Map<String, String> known;

    private final List<String> variables;
    private final BoxSet seen;

    /** Traits that cannot be told yet. */
    private final Set<String> untold;

    /** The first day of each stretch of days in which the same senses are in use; none without a date. */
    private final List<LocalDate> stretches;

    private Namer(Vocabulary vocabulary, Phenotype told, Set<String> untold, Occasion occasion) {
        this.vocabulary = vocabulary;
        this.space = vocabulary.traitSpace();
        this.occasion = occasion;
        this.untold = untold;
        this.known = new LinkedHashMap<>(told.asMap());
        known.putAll(TraitSpace.known(occasion));
        this.variables = List.copyOf(known.keySet());
        this.seen = space.agreeing(known);
        this.stretches = occasion.date()
                .map(date -> PartOfDate.changes(
                        date,
                        vocabulary.names().values().stream()
                                .flatMap(name -> name.senses().values().stream())
                                .toList()))
                .orElse(List.of());
    }

    static Naming of(Vocabulary vocabulary, Phenotype seen, Occasion occasion) {
        Catalogue catalogue = vocabulary.catalogue();
        Phenotype checked = catalogue.check(seen);
        LifeStage stage = catalogue.check(occasion.stage());
        Set<String> untold = judged(catalogue, stage, Judgeable.NO);
        Phenotype told = checked.restrictedTo(checked.traits().stream()
                .filter(trait -> !untold.contains(trait))
                .toList());
        Namer namer = new Namer(vocabulary, told, untold, occasion);
        List<InFacet> facets = vocabulary.facets().values().stream()
                .map(facet -> new InFacet(facet, namer.names(facet)))
                .toList();
        List<String> notices = notices(catalogue, checked, untold, stage);
        namer.takenForGranted(facets).ifPresent(notices::add);
        PartOfDate.notice(occasion.date(), open(facets)).ifPresent(notices::add);
        return new Naming(vocabulary, checked, occasion, told, facets, notices);
    }

    /** All that may be said. */
    private static List<Reading> open(List<InFacet> facets) {
        List<Reading> open = new ArrayList<>();
        facets.forEach(facet -> facet.names()
                .forEach(one -> one.senses().forEach((id, standing) -> {
                    if (standing != Standing.EXCLUDED) {
                        open.add(new Reading(
                                one.name(),
                                Objects.requireNonNull(one.name().senses().get(id))));
                    }
                })));
        return open;
    }

    /** Names that are said from a stage on of which it is not known whether it has been reached. */
    private Optional<String> takenForGranted(List<InFacet> facets) {
        Granted granted = new Granted("could be said by then");
        for (InFacet facet : facets) {
            for (OfName one : facet.names()) {
                if (one.standing() != Standing.EXCLUDED) {
                    one.name().inUse(occasion.date()).stream()
                            .flatMap(sense -> sense.judgeableFrom().stream())
                            .filter(from -> Judgeable.at(occasion.stage(), Optional.of(from)) == Judgeable.UNKNOWN)
                            .findFirst()
                            .ifPresent(from -> granted.add("\"" + one.name() + "\"", from));
                }
            }
        }
        return granted.sentence();
    }

    /** The traits of which it is known, or not known, that they can be told. */
    static Set<String> judged(Catalogue catalogue, LifeStage stage, Judgeable how) {
        return catalogue.traits().values().stream()
                .filter(trait -> trait.judgeable(stage) == how)
                .map(Trait::id)
                .collect(ImmutableSet.toImmutableSet());
    }

    private static List<String> notices(Catalogue catalogue, Phenotype seen, Set<String> untold, LifeStage stage) {
        List<String> notices = new ArrayList<>();
        Granted granted = new Granted("could be told");
        Set<String> unknown = judged(catalogue, stage, Judgeable.UNKNOWN);
        for (String trait : seen.traits()) {
            catalogue.trait(trait).flatMap(Trait::judgeableFrom).ifPresent(from -> {
                if (untold.contains(trait)) {
                    notices.add("what was seen of " + trait + " is left out: it cannot be told before " + from);
                } else if (unknown.contains(trait)) {
                    granted.add(trait, from);
                }
            });
        }
        granted.sentence().ifPresent(notices::add);
        return notices;
    }

    /**
     * A name in use.
     *
     * @param name the name
     * @param open what each of its senses in use on some day has in common with what was seen
     * @param daily for each stretch of days the senses in use
     * @param standing what becomes of it
     */
    private record Candidate(Name name, Map<Sense, BoxSet> open, List<List<Sense>> daily, Standing standing) {}

    private List<OfName> names(Facet facet) {
        List<Candidate> candidates = new ArrayList<>();
        Map<String, List<BoxSet>> certain = new LinkedHashMap<>();
        for (Name name : vocabulary.names(facet.id())) {
            List<Sense> senses = name.inUse(occasion.date());
            if (senses.isEmpty()) {
                continue;
            }
            Map<Sense, BoxSet> open = new LinkedHashMap<>();
            senses.forEach(sense -> open.put(sense, vocabulary.meaning(sense).and(seen)));
            List<List<Sense>> daily = daily(senses);
            Standing standing = standing(open, daily);
            candidates.add(new Candidate(name, open, daily, standing));
            if (standing == Standing.CERTAIN) {
                certain.put(name.word(), meanings(daily));
            }
        }
        return candidates.stream().map(one -> ofName(one, certain)).toList();
    }

    /** What some senses mean together, stretch by stretch; where they are the same, it is the very same set. */
    private List<BoxSet> meanings(List<List<Sense>> daily) {
        Map<List<Sense>, BoxSet> known = new HashMap<>();
        return daily.stream()
                .map(day -> known.computeIfAbsent(day, vocabulary::meaning))
                .toList();
    }

    /** Those of some senses that are in use in each stretch of days. */
    private List<List<Sense>> daily(List<Sense> senses) {
        if (stretches.isEmpty()) {
            return List.of(senses);
        }
        return stretches.stream()
                .map(day -> senses.stream()
                        .filter(sense -> sense.period().includes(day))
                        .toList())
                .toList();
    }

    private OfName ofName(Candidate candidate, Map<String, List<BoxSet>> certain) {
        Map<String, Standing> bySense = new LinkedHashMap<>();
        candidate.open.forEach((sense, open) -> bySense.put(
                sense.id(),
                standing(
                        Map.of(sense, open),
                        candidate.daily.stream()
                                .map(day -> day.contains(sense) ? List.of(sense) : List.<Sense>of())
                                .toList())));
        Set<String> lookAt = lookAt(candidate);
        boolean isCertain = candidate.standing == Standing.CERTAIN;
        boolean isExcluded = candidate.standing == Standing.EXCLUDED;
        List<Condition> looks = candidate.open.keySet().stream()
                .flatMap(sense -> sense.looks().values().stream())
                .toList();
        return new OfName(
                candidate.name,
                candidate.standing,
                bySense,
                candidate.open.keySet().stream()
                        .filter(sense -> PartOfDate.isPartly(sense, occasion.date()))
                        .map(Sense::id)
                        .collect(Collectors.toCollection(LinkedHashSet::new)),
                isCertain ? narrower(candidate.name, certain) : List.of(),
                lookAt,
                isCertain ? Optional.empty() : lookAgain(candidate.open, lookAt),
                isExcluded ? against(looks) : Map.of(),
                isExcluded ? differences(looks) : List.of());
    }

    /** The variables on which it depends, on some day, whether the name applies, in the order of the catalogue. */
    private Set<String> lookAt(Candidate candidate) {
        Set<String> decisive = new LinkedHashSet<>();
        candidate.daily.stream()
                .distinct()
                .forEach(day -> decisive.addAll(
                        space.decisive(union(among(candidate.open, day).values()))));
        return space.boxes.names().stream()
                .filter(variable -> decisive.contains(variable) && !known.containsKey(variable))
                .collect(Collectors.toCollection(LinkedHashSet::new));
    }

    private static Map<Sense, BoxSet> among(Map<Sense, BoxSet> open, List<Sense> day) {
        Map<Sense, BoxSet> some = new LinkedHashMap<>(open);
        some.keySet().retainAll(day);
        return some;
    }

    /** What becomes of a name, whichever day it is: what is so on some days only is possible. */
    private Standing standing(Map<Sense, BoxSet> open, List<List<Sense>> daily) {
        Set<Standing> found = EnumSet.noneOf(Standing.class);
        daily.stream().distinct().forEach(day -> found.add(standing(among(open, day))));
        if (found.size() == 1) {
            return found.iterator().next();
        }
        return found.contains(Standing.CERTAIN) || found.contains(Standing.POSSIBLE)
                ? Standing.POSSIBLE
                : Standing.TOO_EARLY;
    }

    private Standing standing(Map<Sense, BoxSet> open) {
        List<BoxSet> now = new ArrayList<>();
        open.forEach((sense, left) -> {
            if (Judgeable.at(occasion.stage(), sense.judgeableFrom()) != Judgeable.NO) {
                now.add(left);
            }
        });
        BoxSet outside = seen.minus(union(now));
        if (outside.isEmpty()) {
            return Standing.CERTAIN;
        }
        // Whoever looks now cannot tell apart what differs in traits that cannot be told.
        if (!seen.minus(space.freed(outside, untold)).isEmpty()) {
            return Standing.POSSIBLE;
        }
        return open.values().stream().allMatch(BoxSet::isEmpty) ? Standing.EXCLUDED : Standing.TOO_EARLY;
    }

    private BoxSet union(Collection<BoxSet> sets) {
        return sets.stream().reduce(space.boxes.nothing(), BoxSet::or);
    }

    /** Names that mean a part of what a name means, on no day more and on some day less. */
    private static List<String> narrower(Name name, Map<String, List<BoxSet>> certain) {
        List<BoxSet> meaning = Objects.requireNonNull(certain.get(name.word()));
        return certain.entrySet().stream()
                .filter(other -> isNarrower(other.getValue(), meaning))
                .map(Map.Entry::getKey)
                .toList();
    }

    private static boolean isNarrower(List<BoxSet> some, List<BoxSet> others) {
        boolean less = false;
        for (int day = 0; day < some.size(); day++) {
            if (isAsBefore(some, day) && isAsBefore(others, day)) {
                continue;
            }
            int compared = some.get(day).size().compareTo(others.get(day).size());
            if (compared > 0 || !some.get(day).minus(others.get(day)).isEmpty()) {
                return false;
            }
            less |= compared < 0;
        }
        return less;
    }

    @SuppressWarnings("ReferenceEquality") // comparing sets takes longer than what is spared
    private static boolean isAsBefore(List<BoxSet> sets, int day) {
        return day > 0 && sets.get(day) == sets.get(day - 1);
    }

    /** The latest of the stages that matter, counted by each clock. */
    private Optional<LifeStage> lookAgain(Map<Sense, BoxSet> open, Set<String> lookAt) {
        Stream<LifeStage> ofSenses = open.entrySet().stream()
                .filter(sense -> !sense.getValue().isEmpty())
                .flatMap(sense -> sense.getKey().judgeableFrom().stream());
        Stream<LifeStage> ofTraits = lookAt.stream()
                .flatMap(variable -> vocabulary.catalogue().trait(variable).stream())
                .flatMap(trait -> trait.judgeableFrom().stream());
        List<LifeStage> later = Stream.concat(ofSenses, ofTraits)
                .filter(from -> Judgeable.at(occasion.stage(), Optional.of(from)) == Judgeable.NO)
                .toList();
        return later.isEmpty()
                ? Optional.empty()
                : Optional.of(new LifeStage(latest(later, Clock.WEEK), latest(later, Clock.MOULT), Optional.empty()));
    }

    private static OptionalInt latest(List<LifeStage> stages, Clock clock) {
        return stages.stream()
                .flatMapToInt(stage -> stage.count(clock).stream())
                .max();
    }

    private Map<String, String> against(List<Condition> looks) {
        Map<String, String> reason = new LinkedHashMap<>();
        SmallestReason.of(looks.stream().map(this::conflicts).toList()).stream()
                .mapToObj(variables::get)
                .forEach(variable -> reason.put(variable, value(variable)));
        return reason;
    }

    private List<Difference> differences(List<Condition> looks) {
        Condition nearest = looks.stream()
                .min(Comparator.comparingInt(look -> conflicts(look).cardinality()))
                .orElseThrow();
        return conflicts(nearest).stream()
                .mapToObj(variables::get)
                .map(variable -> new Difference(
                        variable, value(variable), allowed(nearest, variable).among(space.boxes.values(variable))))
                .toList();
    }

    /** The numbers of what is known that stands against a look. */
    private BitSet conflicts(Condition look) {
        BitSet conflicts = new BitSet();
        for (int i = 0; i < variables.size(); i++) {
            String variable = variables.get(i);
            if (look.names().contains(variable) && !allowed(look, variable).allows(value(variable))) {
                conflicts.set(i);
            }
        }
        return conflicts;
    }

    private static Allowed allowed(Condition look, String variable) {
        return Objects.requireNonNull(look.variables().get(variable));
    }

    private String value(String variable) {
        return Objects.requireNonNull(known.get(variable));
    }
}
