package org.geneticsrules.vocabulary;

import com.google.common.collect.ImmutableSet;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collection;
import java.util.Comparator;
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

    private Namer(Vocabulary vocabulary, Phenotype told, Set<String> untold, Occasion occasion) {
        this.vocabulary = vocabulary;
        this.space = vocabulary.traitSpace();
        this.occasion = occasion;
        this.untold = untold;
        this.known = new LinkedHashMap<>(told.asMap());
        known.putAll(TraitSpace.known(occasion));
        this.variables = List.copyOf(known.keySet());
        this.seen = space.agreeing(known);
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
        facets.forEach(facet -> notices.addAll(namer.takenForGranted(facet)));
        return new Naming(vocabulary, checked, occasion, told, facets, notices);
    }

    /** Names that are said from a stage on of which it is not known whether it has been reached. */
    private List<String> takenForGranted(InFacet facet) {
        List<String> notices = new ArrayList<>();
        for (OfName one : facet.names()) {
            if (one.standing() != Standing.EXCLUDED) {
                one.name().inUse(occasion.date()).stream()
                        .flatMap(sense -> sense.judgeableFrom().stream())
                        .filter(from -> Judgeable.at(occasion.stage(), Optional.of(from)) == Judgeable.UNKNOWN)
                        .findFirst()
                        .ifPresent(from -> notices.add("it is taken for granted that an animal could be called \""
                                + one.name() + "\" by then, which is so from " + from + " on"));
            }
        }
        return notices;
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
        Set<String> unknown = judged(catalogue, stage, Judgeable.UNKNOWN);
        for (String trait : seen.traits()) {
            String from = catalogue
                    .trait(trait)
                    .flatMap(Trait::judgeableFrom)
                    .map(LifeStage::toString)
                    .orElse("");
            if (untold.contains(trait)) {
                notices.add("what was seen of " + trait + " is left out: it cannot be told before " + from);
            } else if (unknown.contains(trait)) {
                notices.add(
                        "it is taken for granted that " + trait + " could be told, which is so from " + from + " on");
            }
        }
        return notices;
    }

    /**
     * A name in use.
     *
     * @param name the name
     * @param open what each of its senses in use has in common with what was seen
     * @param standing what becomes of it
     */
    private record Candidate(Name name, Map<Sense, BoxSet> open, Standing standing) {}

    private List<OfName> names(Facet facet) {
        List<Candidate> candidates = new ArrayList<>();
        Map<String, BoxSet> certain = new LinkedHashMap<>();
        for (Name name : vocabulary.names(facet.id())) {
            List<Sense> senses = name.inUse(occasion.date());
            if (senses.isEmpty()) {
                continue;
            }
            Map<Sense, BoxSet> open = new LinkedHashMap<>();
            senses.forEach(sense -> open.put(sense, vocabulary.meaning(sense).and(seen)));
            Standing standing = standing(open);
            candidates.add(new Candidate(name, open, standing));
            if (standing == Standing.CERTAIN) {
                certain.put(name.word(), vocabulary.meaning(senses));
            }
        }
        return candidates.stream().map(one -> ofName(one, certain)).toList();
    }

    private OfName ofName(Candidate candidate, Map<String, BoxSet> certain) {
        Map<String, Standing> bySense = new LinkedHashMap<>();
        candidate.open.forEach((sense, open) -> bySense.put(sense.id(), standing(Map.of(sense, open))));
        Set<String> lookAt = space.decisive(union(candidate.open.values())).stream()
                .filter(variable -> !known.containsKey(variable))
                .collect(Collectors.toCollection(LinkedHashSet::new));
        boolean isCertain = candidate.standing == Standing.CERTAIN;
        boolean isExcluded = candidate.standing == Standing.EXCLUDED;
        List<Condition> looks = candidate.open.keySet().stream()
                .flatMap(sense -> sense.looks().values().stream())
                .toList();
        return new OfName(
                candidate.name,
                candidate.standing,
                bySense,
                isCertain ? narrower(candidate.name, certain) : List.of(),
                lookAt,
                isCertain ? Optional.empty() : lookAgain(candidate.open, lookAt),
                isExcluded ? against(looks) : Map.of(),
                isExcluded ? differences(looks) : List.of());
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

    /** Names that mean a part of what a name means, and not all of it. */
    private static List<String> narrower(Name name, Map<String, BoxSet> certain) {
        BoxSet meaning = Objects.requireNonNull(certain.get(name.word()));
        BigInteger size = meaning.size();
        return certain.entrySet().stream()
                .filter(other -> other.getValue().size().compareTo(size) < 0
                        && other.getValue().minus(meaning).isEmpty())
                .map(Map.Entry::getKey)
                .toList();
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
