/** The address that opens whatever leads people on this device to a place (Google's Maps URLs, version 1, which each system hands to its own map). */
export const directionsTo = (place: string): string => `https://www.google.com/maps/dir/?api=1&destination=${encodeURIComponent(place)}`
