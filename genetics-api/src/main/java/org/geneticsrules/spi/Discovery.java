package org.geneticsrules.spi;

import java.lang.annotation.AnnotationFormatError;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.ServiceConfigurationError;
import java.util.ServiceLoader;
import java.util.Spliterator;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Finds plug-ins and reads their descriptors, without running any of them. */
final class Discovery {

    private static final Pattern ID = Pattern.compile("[a-z0-9]+([.-][a-z0-9]+)*");
    private static final Pattern VERSION = Pattern.compile("[A-Za-z0-9.+-]+");

    /** A service loader that only ever fails is left alone after this many failures. */
    private static final int MOST_FAILURES = 1000;

    private final List<Candidate> found = new ArrayList<>();
    private final List<PluginProblem> problems = new ArrayList<>();

    private Discovery() {}

    static Discovery of(Collection<? extends GeneticsProvider> providers) {
        Discovery discovery = new Discovery();
        providers.forEach(provider -> discovery.describe(provider.getClass(), () -> provider));
        return discovery;
    }

    static Discovery in(ClassLoader loader) {
        ServiceFiles files = ServiceFiles.of(loader);
        Discovery discovery = new Discovery();
        discovery.walk(ServiceLoader.load(GeneticsProvider.class, loader), files);
        discovery.problems.addAll(files.problems());
        return discovery;
    }

    static Discovery in(ModuleLayer layer) {
        Discovery discovery = new Discovery();
        discovery.walk(ServiceLoader.load(layer, GeneticsProvider.class), ServiceFiles.none());
        return discovery;
    }

    List<PluginProblem> problems() {
        return problems;
    }

    /** The wanted plug-ins in order of their descriptors, less those that share id and version, which become problems. */
    List<Candidate> chosen(Predicate<ProviderDescriptor> wanted) {
        TreeMap<String, List<Candidate>> releases = found.stream()
                .filter(candidate -> wanted.test(candidate.descriptor()))
                .collect(Collectors.groupingBy(
                        candidate -> candidate.descriptor().release(), TreeMap::new, Collectors.toList()));
        List<Candidate> chosen = new ArrayList<>();
        releases.forEach((release, twins) -> {
            if (twins.size() == 1) {
                chosen.addAll(twins);
            } else {
                problems.add(PluginProblem.of(
                        "duplicate-plugin",
                        release,
                        twins.stream().map(twin -> twin.descriptor().location()).toList(),
                        twins.size() + " plug-ins have this id and version: "
                                + twins.stream()
                                        .map(Candidate::descriptor)
                                        .sorted()
                                        .map(twin -> twin.className() + " in " + twin.location())
                                        .collect(Collectors.joining(", "))
                                + "; none is served. Leave one, or choose one by its location"));
            }
        });
        return chosen;
    }

    private void walk(ServiceLoader<GeneticsProvider> services, ServiceFiles files) {
        Spliterator<ServiceLoader.Provider<GeneticsProvider>> entries =
                services.stream().spliterator();
        boolean more = true;
        int failures = 0;
        while (more && failures < MOST_FAILURES) {
            try {
                more = entries.tryAdvance(entry -> describe(entry, files));
            } catch (ServiceConfigurationError | LinkageError e) {
                failures++;
                String message = String.valueOf(e.getMessage());
                problems.add(PluginProblem.of(
                        "broken-service",
                        GeneticsProvider.class.getSimpleName(),
                        files.jarsMentioned(message),
                        "a class named as a provider cannot be used: " + message));
            }
        }
    }

    private void describe(ServiceLoader.Provider<GeneticsProvider> entry, ServiceFiles files) {
        Class<? extends GeneticsProvider> type = entry.type();
        if (files.jars(type.getName()).size() < 2) {
            describe(type, entry);
        }
    }

    private void describe(Class<?> type, Supplier<GeneticsProvider> start) {
        try {
            Plugin plugin = type.getAnnotation(Plugin.class);
            if (plugin == null) {
                bad(
                        "no-descriptor",
                        type,
                        "the class " + type.getName() + " is not annotated with @" + Plugin.class.getSimpleName()
                                + ", which has to say id, version, title and licence");
                return;
            }
            ProviderDescriptor descriptor = ProviderDescriptor.of(plugin, type);
            if (check(descriptor, type)) {
                found.add(new Candidate(descriptor, start));
            }
        } catch (RuntimeException | LinkageError | AnnotationFormatError e) {
            bad("bad-descriptor", type, "the annotation of " + type.getName() + " cannot be read: " + e);
        }
    }

    private boolean check(ProviderDescriptor descriptor, Class<?> type) {
        int before = problems.size();
        if (!ID.matcher(descriptor.id()).matches()) {
            bad(
                    "bad-descriptor",
                    type,
                    "the id \"" + descriptor.id()
                            + "\" is not made of lower-case letters and digits joined by points or" + " hyphens");
        }
        if (!VERSION.matcher(descriptor.version()).matches()) {
            bad(
                    "bad-descriptor",
                    type,
                    "the version \"" + descriptor.version()
                            + "\" is not made of letters, digits, points, hyphens and plus signs");
        }
        if (descriptor.title().isBlank() || descriptor.licence().isBlank()) {
            bad("bad-descriptor", type, "the title or the licence is blank");
        }
        return problems.size() == before;
    }

    private void bad(String code, Class<?> type, String message) {
        problems.add(PluginProblem.of(code, type.getName(), List.of(Locations.of(type)), message));
    }
}
